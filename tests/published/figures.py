"""The guide's numbers typed a second time, from the sources, before a look at `knowledge/numbers.yaml`.

Where the guide then took another figure for a good reason, the row was changed, and a line below it that begins
with # says why. Such a line also says why the guide need not take the safest published figure.

A row holds the lowest and the highest figure published for a number, the figure that the guide should take, the
side that is safer for the lamb, and why. A figure is `value unit source place` in the unit that the source
itself prints; a value may be a quotient, where a source prints an amount for a weight.

The place is a section of our notes on the sources: `1:` for chill, milk, fostering, weaning and warmth, `2:` for
illness and care. `-` is no place in them: the source was read later and stands in `sources.yaml`, or no source
prints a figure, and the range is what a sheep vet would accept.
`common-practice` is also the source of a line that we draw ourselves between published ones.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Figure:
    """A figure as a source prints it."""

    value: float
    unit: str
    source: str
    place: str


@dataclass(frozen=True)
class Row:
    """What is published for one number."""

    low: Figure
    high: Figure
    takes: Figure
    safer: str
    why: str


COLD = """
severe-chill      | 98 degF haf 1:1.1          | 37.5 degC fwi97 1:1.1        | 37 degC eales-1984 1:1.1      | higher | fuel and warmth come sooner
# The field trial's own line, and that of most vets.
normal-low        | 38 degC fwi97 1:1.1        | 39 degC vsheet 1:1.1         | 39 degC eales-1984 1:1.1      | higher | a chill is seen sooner
normal-low-older  | 38 degC fwi97 2:3a         | 101.5 degF penn 2:3a         | 101.5 degF smrm 2:3a          | higher | a chill is seen sooner
normal-high       | 39 degC fwi97 1:1.1        | 40 degC vsheet 1:1.1         | 40 degC vsheet 1:1.1          | lower  | a fever is seen sooner
# 39 to 40 is normal for most vets: the lower lines would call healthy lambs feverish.
fever-today       | 40 degC vsheet 1:1.1       | 41 degC lublin-2024 2:3      | 40.5 degC common-practice 2:3a | lower | the vet comes sooner
# Our own margin: a healthy lamb in full fleece reads up to 104.5 degF on a hot day (penn).
fever-now         | 41 degC lublin-2024 2:3    | 41 degC lublin-2024 2:3      | 41 degC lublin-2024 2:3       | lower  | the vet comes sooner
newborn-dip       | 3 h amcc58 1:1.1           | 3 h amcc58 1:1.1             | 3 h amcc58 1:1.1              | lower  | a low reading counts sooner
glucose-age       | 0 h ifj-1 1:1.2            | 6 h eales-1982 1:1.2         | 5 h eales-1984 1:1.2          | lower  | spare glucose harms none
# The line of the field trial and of most vets; below it, glucose is seldom needed.
glucose-rate      | 10 ml/kg eales-1982 1:1.3  | 5 ml/lb forum 1:1.3          | 10 ml/kg eales-1982 1:1.3     | lower  | too much is an overdose
glucose-strength  | 20 percent eales-1982 1:1.3 | 25 percent forum 1:1.3      | 20 percent eales-1982 1:1.3   | lower  | strong glucose burns
glucose-stock     | 40 percent nzvet 1:1.3     | 50 percent forum 1:1.3       | 40 percent nzvet 1:1.3        | higher | taken as strong, it is thinned more
# The kits hold 40. It has two sides: a stronger bottle taken as 40 burns, a weaker one taken as 50 feeds less.
warm-air-max      | 35 degC from-memory 1:1.4  | 45 degC ncvets 1:1.4         | 40 degC eales-1982 1:1.4      | lower  | a hot box kills
# 35 to 37 is from memory; both trials used 40.
warming-check     | 5 min telk 1:1.4           | 30 min from-memory 1:1.4     | 20 min fwi97 1:1.4            | lower  | overheating is seen sooner
# 5 is for a hair dryer, from an unsigned page.
mild-check        | 30 min ncvets 1:1.4        | 30 min ncvets 1:1.4          | 30 min ncvets 1:1.4           | lower  | a fall is seen sooner
warming-limit     | 30 min common-practice -   | 120 min common-practice -    | 60 min common-practice -      | lower  | the vet comes sooner
# No source. In a trial chilled lambs gained two degrees in ten minutes; at home it takes longer.
lamp-height       | 20 inch osu-lamp 1:8.1     | 20 inch prem-lamp 1:8.1      | 20 inch osu-lamp 1:8.1        | higher | burns and fire
lamp-watts        | 250 W osu-lamp 1:8.1       | 250 W osu-lamp 1:8.1         | 250 W osu-lamp 1:8.1          | lower  | burns and fire
lamp-watts-enough | 125 W mdblog 1:8.1         | 175 W prem-lamp 1:8.1        | 175 W prem-lamp 1:8.1         | lower  | burns and fire
# 125 was in a closed barrel, which the other page forbids.
bath-water        | 38 degC rewarm 1:1.4       | 38 degC rewarm 1:1.4         | 38 degC rewarm 1:1.4          | lower  | hotter was not tried
"""

FIRST_MILK = """
first-milk-rate       | 20 ml/lb haf 1:2.1       | 150/2.5 ml/kg vsheet 1:3  | 50 ml/kg teag-col 1:2.1      | lower  | a full stomach spills into the lungs
# Four of the smaller feeds fall short of the day's need.
first-milk-day-rate   | 10 pct_bw iowa 1:2.1     | 250 ml/kg ifj-col 1:2.1   | 200 ml/kg teag-col 1:2.1     | higher | hunger, and too little antibody
# Four feeds of 50 ml/kg; more is for the cold lamb. The lowest is called a minimum.
first-milk-cold-extra | 15 percent sab 1:2.1     | 30 percent vsheet 1:2.1   | 20 percent vsheet 1:2.1      | higher | cold burns fuel
# Where the two leaflets meet, and above the field study's 17.
first-milk-soon       | 2 h vt 1:2.2             | 8 h haf-c 1:2.2           | 2 h vt 1:2.2                 | lower  | the gut closes
first-milk-alarm      | 2 h vt 1:2.2             | 6 h teag-col 1:2.2        | 4 h lsb 1:2.2                | lower  | the gut closes
# Between the aim of 2 and the limit of 6.
first-milk-late       | 6 h teag-col 1:2.2       | 8 h haf-c 1:2.2           | 6 h bond 1:2.1               | lower  | the gut closes
first-milk-fading     | 12 h dom01 1:2.2         | 18 h storey-300 1:2.2     | 12 h dom01 1:2.2             | lower  | nobody waits for it
first-milk-poor       | 12 h kerr 1:2.2          | 36 h ross 1:2.2           | 24 h dom01 1:2.2             | lower  | it counts as unprotected sooner
# Three trials still find some uptake before 24 h; the earlier lines are opinions.
first-milk-end        | 24 h ross 1:2.2          | 48 h from-memory 1:2.6    | 36 h harper 1:2.2            | higher | late first milk still feeds
# The longer time is from memory.
first-milk-feeds      | 3 count fj-tube 1:2.1    | 5 count vsheet 1:2.1      | 4 count teag-col 1:2.1       | higher | more milk, none of it too much
# 4 times 50 ml/kg is the day's 200.
cow-extra             | 20 percent teag-col 1:2.3 | 30 percent agri-1 1:2.3  | 30 percent agri-1 1:2.3      | higher | a cow's is weaker
thaw-water-max        | 38 degC wikivet 1:2.5    | 60 degC sruc-sn 1:2.5     | 50 degC common-practice 1:2.5 | lower | heat spoils antibody
# Ours: 10 below the heat that spoils it, as cooler water takes too long.
milk-heat-max         | 38 degC wikivet 1:2.5    | 60 degC sruc-sn 1:2.5     | 40 degC agri-2 1:2.5         | lower  | heat spoils antibody and scalds
# The two cooler limits are a lamb's own heat.
milk-serve            | 100 degF capj 1:4.3      | 39 degC vsheet 1:2.5      | 39 degC vsheet 1:2.5         | lower  | hot milk scalds
# Body heat. It has two sides: cold milk chills a weak lamb.
first-milk-fridge     | 48 h sruc-sn 1:2.5       | 7 day wikivet 1:2.5       | 48 h sruc-sn 1:2.5           | lower  | it goes off
first-milk-freezer    | 6 round_month udel 1:2.5 | 2 round_year sruc-sn 1:2.5 | 1 round_year wikivet 1:2.5  | lower  | it loses worth
# The half year is a careful mark for cows.
first-milk-spoils     | 60 degC sruc-sn 1:2.5    | 63.5 degC heat 1:2.5      | 140 degF calfblog 1:2.5      | lower  | heat spoils antibody
"""

FEEDING = """
milk-day-rate        | 10 pct_bw/day rangi 1:4.2 | 20 pct_bw/day lawson 1:4.2 | 18 pct_bw/day common-practice 1:4.2 | lower | big feeds bring bloat
# Ours: no source prints 18. It is inside lawson's 15-20 and above rangi's 10-15; both meet at 15.
feed-ceiling         | 50 ml/kg vt 1:2.1        | 280/5 ml/kg wej 1:4.2    | 50 ml/kg vt 1:2.1             | lower  | a full stomach spills into the lungs
feed-most            | 16 floz storey-314 1:4.2 | 1000 ml pacif 1:4.2      | 16 floz storey-314 1:4.2      | lower  | big feeds bring bloat
feeds-first-week     | 2 count vatech 1:4.2     | 12 count lawson 1:4.2    | 6 count nmsu 1:4.2            | higher | small feeds are safe feeds
# 12 is for day 1 alone; the same book comes down to 6 by day 4.
feeds-to-three-weeks | 2 count vatech 1:4.2     | 4 count nmsu 1:4.2       | 4 count lawson 1:4.2          | higher | small feeds are safe feeds
feeds-to-five-weeks  | 2 count vatech 1:4.2     | 4 count nmsu 1:4.2       | 3 count lawson 1:4.2          | higher | small feeds are safe feeds
# Both books that go by age.
feeds-later          | 2 count lawson 1:4.2     | 4 count nmsu 1:4.2       | 3 count vatech 1:4.2          | higher | small feeds are safe feeds
# Two feeds of 50 ml/kg hold no more than keeps it alive; four are for the first weeks of that page.
week-one             | 3 day vatech 1:4.2       | 7 day lawson 1:4.2       | 7 day lawson 1:4.2            | higher | small feeds go on for longer
week-three           | 14 day pacif 1:4.2       | 21 day lawson 1:4.2      | 21 day lawson 1:4.2           | higher | small feeds go on for longer
week-five            | 28 day pacif 1:4.2       | 35 day lawson 1:4.2      | 35 day lawson 1:4.2           | higher | small feeds go on for longer
recovery-feed        | 1 floz storey-304 1:3    | 3 floz bagley 1:3        | 2 floz storey-304 1:3         | lower  | a weak stomach is slow
# Where the two meet; recovery-rate holds a small lamb lower.
recovery-rate        | 30/5 ml/kg storey-304 1:3 | 60/2 ml/kg storey-304 1:3 | 15 ml/kg common-practice 1:3 | lower | a weak stomach is slow
# Ours: the book's 30 to 60 ml over lambs of 2 to 5 kg; 60 ml is reached at 4 kg.
recovery-gap         | 1 h common-practice -    | 4 h bagley 1:3           | 2 h common-practice -         | lower  | small feeds are soon used
mix-water-max        | 45 degC volac 1:4.1      | 140 degF capj 1:4.1      | 45 degC volac 1:4.1           | lower  | heat spoils powder and scalds
powder-volume        | 0.7 ml common-practice - | 1 ml volac 1:4.1         | 1 ml volac 1:4.1              | lower  | the mix comes out weaker
# 200 g in 800 ml is the maker's litre.
tube-out             | 50 mm vsheet 1:3         | 75 mm vsheet 1:3         | 50 mm vsheet 1:3              | lower  | the end reaches the stomach
# It has two sides: with too little left out, the tube is in too far.
syringe-time         | 20 s fwi96 1:3           | 25 s vsheet 1:3          | 25 s vsheet 1:3               | higher | slow milk stays down
bottle-hunger        | 3 h from-memory 1:5      | 6 h from-memory 1:5      | 3 h from-memory 1:5           | lower  | hunger chills
missed-feeds         | 2 count common-practice 2:8 | 3 count common-practice - | 2 count common-practice 2:8 | lower  | the vet hears sooner
unfed-most           | 4 h common-practice -    | 8 h common-practice -    | 6 h teag-col 1:2.2            | lower  | hunger chills
"""

SCOURS = """
electrolyte-rate  | 50 ml/kg scott-farmer 2:1d  | 50 ml/kg ahdb-2019 2:1d       | 50 ml/kg scott-farmer 2:1d     | lower  | a full stomach spills into the lungs
electrolyte-most  | 150 ml dvm360-f 2:1d        | 250 ml dvm360-f 2:1d          | 250 ml dvm360-f 2:1d           | lower  | a full stomach spills into the lungs
# The rate per kg comes first: 250 is a dose for 5 kg.
electrolyte-times | 2 count common-practice -   | 4 count nadis-l5 2:1d         | 2 count common-practice -      | lower  | no overload beside its milk
# Four are for watery mouth, when milk is stopped.
milk-off-most     | 0 h cargill 2:1e            | 48 h simmons-ekarius 2:1e     | 24 h simmons-ekarius 2:1e      | lower  | electrolyte does not feed
# Between them: it is a limit, not advice.
upkeep-rate       | 1 ml/lb/h dvm360-f 2:1d     | 100 ml/kg/day from-memory 2:1d | 1 ml/lb/h dvm360-f 2:1d       | lower  | small ruminants are overloaded
# It has two sides: too little leaves it dry. The two texts on small ruminants agree; the higher ones are for calves.
loss-rate         | 20 ml/kg/day from-memory 2:1d | 10 pct_bw/day kehoe 2:1d    | 5 pct_bw/day kehoe 2:1d        | lower  | small ruminants are overloaded
# It has two sides. The lower figures are from memory.
dryness-light     | 1 percent smrm 2:1c         | 5 percent smrm 2:1c           | 5 percent smrm 2:1c            | higher | the dry lamb is not missed
dryness-marked    | 6 percent smrm 2:1c         | 8 percent kehoe 2:1c          | 8 percent kehoe 2:1c           | higher | the dry lamb is not missed
dryness-severe    | 8 percent calf-table 2:1c   | 12 percent smrm 2:1c          | 10 percent kehoe 2:1c          | higher | the dry lamb is not missed
# Where three tables begin to call it severe. The worst rows go to 12 and over, for a lamb that is the vet's anyway.
tent-quick        | 1 s smrm 2:1c               | 4 s smrm 2:1c                 | 2 s kehoe 2:1c                 | lower  | dryness is seen sooner
# The sheep table and one calf table call less than 1 normal; 4 is the end of the sheep table's lightest class.
tent-stays        | 5 s calf-table 2:1c         | 11 s smrm 2:1c                | 5 s calf-table 2:1c            | lower  | dryness is seen sooner
newborn-scours    | 12 h umd 2:1a               | 5 day cahfs 2:1a              | 72 h common-practice 2:2c      | higher | the vet comes to more of them
# Ours: to the end of watery mouth (sruc-wm, wikivet). The germs go on to day 4 or 5, and then the vet is phoned the same day.
young-scours      | 10 day umd 2:1a             | 3 week sruc-cl 2:1a           | 14 day smrm 2:1a               | higher | the vet hears of more of them
# Two weeks also is our safer line on keeping milk (2:1e).
coccidia-from     | 3 week teagasc-cocc 2:1a    | 1 round_month smrm 2:1a       | 3 week teagasc-cocc 2:1a       | lower  | it is thought of sooner
scours-limit      | 12 h common-practice -      | 24 h common-practice 2:8      | 24 h common-practice 2:8       | lower  | the vet hears sooner
"""

BELLY_AND_BIRTH = """
watery-mouth-to | 36 h nadis-l5 2:2c            | 72 h sruc-wm 2:2c          | 72 h sruc-wm 2:2c           | higher | it is thought of for longer
milk-belly-to   | 4 week nzag 2:2a              | 6 week herath 1:7          | 6 week ucd 1:7              | higher | it counts as deadly for longer
drunk-from      | 7 day angell-2013 2:1h        | 7 day angell-2013 2:1h     | 7 day angell-2013 2:1h      | lower  | it is thought of sooner
drunk-to        | 28 day angell-2013 2:1h       | 28 day angell-2013 2:1h    | 28 day angell-2013 2:1h     | higher | it is thought of for longer
bloat-onset     | 30 min nzag 2:2a              | 120 min common-practice -  | 30 min nzag 2:2a            | higher | it is watched for longer
# It is only what to expect; a later swelling is as urgent.
urine-kills     | 2 day smrm 2:2d               | 3 day smrm 2:2d            | 2 day smrm 2:2d             | lower  | nobody waits
birth-single    | 8 lb smrm 2:9                 | 6 kg teag-col 1:7          | 8 lb smrm 2:9               | lower  | a heavy guess overfeeds
birth-twin      | 7 lb smrm 2:9                 | 5 kg teag-col 1:7          | 7 lb smrm 2:9               | lower  | a heavy guess overfeeds
birth-triplet   | 2.5 kg vsheet 1:7             | 4.5 kg ucd2 1:7            | 2.5 kg vsheet 1:7           | lower  | a heavy guess overfeeds
guess-growth    | 100 g/day from-memory 1:9     | 273 g/day teag-96 1:7      | 100 g/day from-memory 1:9   | lower  | a heavy guess overfeeds
# Recalled for a low plane: 150. What 15 % of its weight in milk yields is worked out at about 90 a day.
growth-fast     | 380 g/day muir 1:7            | 437 g/day muir 1:7         | 437 g/day muir 1:7          | lower  | a wrong weight is caught
# Singles do grow as fast as that.
foster-apart    | 20 min teag-opt 1:6           | 20 min indo-f 1:6          | 20 min teag-opt 1:6         | lower  | her own lamb must suck too
foster-days     | 3 day from-memory 1:6         | 5 day from-memory 1:6      | 3 day from-memory 1:6       | lower  | it is hurt and unfed
foster-suck     | 6 h teag-col 1:2.2            | 6 h teag-col 1:2.2         | 6 h teag-col 1:2.2          | lower  | the gut closes
foster-gain     | 24 h from-memory 1:6          | 24 h from-memory 1:6       | 24 h from-memory 1:6        | lower  | hunger chills
skin-on         | 24 h clyx 1:6                 | 72 h common-practice -     | 24 h clyx 1:6               | lower  | a skin rots
meconium-by     | 12 h from-memory 2:2d         | 24 h from-memory 2:2d      | 12 h from-memory 2:2d       | lower  | a blocked gut is seen sooner
navel-strength  | 3 percent ifj-navel 2:3       | 10 percent svs-2023 2:3    | 7 percent svs-2023 2:3      | higher | weak iodine dries badly
# It is the least; the strongest burns.
navel-again     | 2 h ifj-navel 2:3             | 6 h fas 2:3                | 6 h fas 2:3                 | lower  | germs have less time
# The sooner time is from a press column.
"""

CHEST_AND_LEGS = """
breaths-most      | 60 count penn 2:3b         | 94.7 count piccione-lambs -  | 60 count penn 2:3b           | lower  | a sick chest is seen sooner
# Penn gives it for grown sheep on a hot day. The other is the mean of ten healthy lambs in Sicily, 94.7 +- 33.2.
milk-fever-days   | 24 h from-memory 2:3       | 5 day common-practice -      | 5 day common-practice -      | higher | a late fever is not missed
# The fever is looked for in the first three days. The handbook for sheep on ships speaks of a few days to death.
chest-from        | 2 week flock-herd-2007 2:3 | 4 week lublin-2024 2:3       | 2 week flock-herd-2007 2:3   | lower  | the vet is phoned sooner
chest-to          | 4 week flock-herd-2007 2:3 | 12 week lublin-2024 2:3      | 12 week lublin-2024 2:3      | higher | the vet is phoned for longer
better-by         | 2 day common-practice -    | 2 day common-practice -      | 2 day common-practice -      | lower  | a failed treatment is seen sooner
joint-ill-from    | 5 day nadis-ji 2:3         | 10 day nadis-ji 2:3          | 5 day nadis-ji 2:3           | lower  | joints are felt sooner
joint-ill-to      | 4 week ahdb-ji -           | 6 week fwi-2002 -            | 6 week fwi-2002 -            | higher | a limp counts for longer
ring-window       | 4 day purdue-tet 2:4   | 30 day purdue-tet -      | 21 day au-tetanus 2:4    | higher | lockjaw is thought of for longer
# Nearly all cases come within three weeks of marking; the longer figure is what a class page asks about.
leg-check         | 12 h common-practice -     | 12 h common-practice -       | 12 h common-practice -       | lower  | a bad joint is seen sooner
limp-better       | 24 h common-practice -     | 24 h common-practice -       | 24 h common-practice -       | lower  | a joint is treated sooner
foot-better       | 2 day common-practice -    | 4 day fwi96-feet -           | 2 day common-practice -      | lower  | the hoof is saved
bent-better       | 3 day common-practice -    | 3 day common-practice -      | 3 day common-practice -      | lower  | a stuck joint is seen sooner
cord-pinch        | 5 min common-practice -    | 5 min common-practice -      | 5 min common-practice -      | higher | a clot needs time
"""


RAISING = """
gain-expected     | 0.19 kg/day teag-96 1:7    | 0.286 kg/day gott 1:7       | 0.19 kg/day teag-96 1:7     | lower  | milk never runs ahead of it
gain-young        | 0.089 kg/day danso16 1:9    | 0.167 kg/day danso16 1:9    | 0.1 kg/day danso16 1:9      | higher | a poor doer is seen sooner
# Worked out there: 15 % of its weight in milk yields 89 g a day in a lamb of 5 kg, 20 % yields 167.
ewe-look          | 15 min common-practice -    | 30 min common-practice -    | 15 min common-practice -    | lower  | her clock is not run over
gain-good         | 0.19 kg/day teag-96 1:7    | 0.286 kg/day gott 1:7       | 0.25 kg/day rease 1:7       | lower  | fair growth is not called bad
# Trials and a vet practice name 250 g.
wean-age          | 21 day hean82 1:7          | 42 day ucd 1:7              | 42 day ucd 1:7              | higher | early weaning kills small ones
wean-weight       | 9 kg ifj-art 1:7           | 30 lb raising 1:7           | 12 kg smeat83 1:7           | higher | light ones stop growing
# 25 to 30 lb is a farm page's, grade D; 12 kg is a trial's.
wean-feed         | 0.25 kg/day ucd 1:7        | 0.3 kg/day raising 1:7      | 0.25 kg/day ucd 1:7         | higher | the first stomach must work
# 250 to 300 g is a farm page's, grade D.
wean-feed-days    | 3 count ifj-art 1:7        | 3 count ifj-art 1:7         | 3 count ifj-art 1:7         | higher | one good day is chance
milk-least        | 28 day vsr 1:4.2           | 28 day vsr 1:4.2            | 28 day vsr 1:4.2            | higher | the gut needs it
off-milk-latest   | 90 day common-practice -   | 90 day common-practice -    | 90 day common-practice -    | lower  | it must learn to graze
wean-check        | 22 day wh81 1:7            | 43 day wh81 1:7             | 43 day wh81 1:7             | lower  | a check is seen sooner
# A day after weaning, which is at 42 days here and was at 21 there.
milk-week-one     | 16 floz storey-314 1:4.2   | 30 floz storey-314 1:4.2    | 750 ml pacif 1:4.2          | lower  | too much at once bloats
# The day's milk at 5 days is the least of the week and that at 3 to 4 the most in the book's own table.
milk-week-two     | 16 floz storey-314 1:4.2   | 1000 ml pacif 1:4.2         | 24 floz storey-314 1:4.2    | lower  | too much at once bloats
# The top of the lower table: 4 feeds of 6 oz. The two tables do not meet here.
milk-week-three   | 24 floz storey-314 1:4.2   | 1500 ml pacif 1:4.2         | 32 floz storey-314 1:4.2    | lower  | too much at once bloats
# The top of the lower table.
milk-week-four    | 48 floz storey-314 1:4.2   | 2100 ml pacif 1:4.2         | 48 floz storey-314 1:4.2    | lower  | too much at once bloats
milk-week-five    | 48 floz storey-314 1:4.2   | 2000 ml pacif 1:4.2         | 48 floz storey-314 1:4.2    | lower  | too much at once bloats
mix-share         | 10 percent large65 1:4.1   | 25 percent large65 1:4.1    | 16.7 percent volac 1:4.1    | lower  | thin milk feeds less than told
# 200 g in a litre of water; bags name 16.7 to 20.
energy-upkeep     | 0.28 MJ/kg/day wn71 1:8.3  | 0.407 MJ/kg/day jag71 1:8.3 | 0.40 MJ/kg/day danso16 1:8.3 | higher | hunger is told sooner
# Jagusch's own figure, 145.2 kcal by metabolic weight, is 0.407 at 5 kg; Walker and Norton's 100 to 126 is 0.28 to 0.35.
energy-gain       | 13.4 MJ/kg nz85 1:8.3      | 13.8 MJ/kg danso16 1:8.3    | 13.8 MJ/kg danso16 1:8.3    | higher | growth is not promised
energy-powder     | 21.2 MJ/kg wn71 1:8.3      | 21.5 MJ/kg from-memory 1:9  | 21.2 MJ/kg wn71 1:8.3       | lower  | growth is not promised
energy-creep      | 10 MJ/kg common-practice - | 11 MJ/kg common-practice -  | 10.4 MJ/kg rmsag -          | lower  | growth is not promised
# 12 in dry matter, an eighth of it water.
wet-heat          | 3.8 W/kg mcc83 1:8.2       | 7 W/kg mcc83 1:8.2          | 7 W/kg mcc83 1:8.2          | higher | cold is told sooner
wind-heat         | 0.8 W/kg mcc83 1:8.2       | 1.5 W/kg mcc83 1:8.2        | 1.5 W/kg mcc83 1:8.2        | higher | cold is told sooner
navel-by          | 15 min farmweek 2:3        | 4 h ifj-navel 2:3           | 15 min farmweek 2:3         | lower  | germs have less time
onto-milk-by      | 24 h vatech 1:4.2          | 4 day storey-314 1:4.2      | 48 h vatech 1:4.2           | lower  | it needs more food than that
# First milk on its second day still guards the gut.
lamp-off          | 2 day common-practice -    | 7 day common-practice -     | 3 day rnz 1:8.2             | higher | it may chill without
# The store of fuel is mostly gone by then, and a lamp for longer does harm.
company-from      | 1 day common-practice -    | 3 day common-practice -     | 2 day common-practice -     | lower  | alone it takes people for its own
# After its first milk and its first night.
out-from          | 3 day common-practice -    | 14 day common-practice -    | 7 day common-practice -     | higher | a small one chills
# A dry, fed lamb stands cold before that.
flock-from        | 14 day common-practice -   | 42 day common-practice -    | 21 day common-practice -    | higher | small ones are butted
# Later it has learned to be a person.
water-from        | 1 day ifj-art 1:7          | 14 day vsr 1:4.2            | 2 day common-practice 1:7   | lower  | it learns to drink
# From the second day it can reach a bucket.
creep-from        | 5 day nmsu 1:7             | 21 day bsap69 1:7           | 7 day nmsu 1:7              | lower  | it learns to eat
# The later end of what is printed; it eats next to nothing before.
creep-protein     | 17 percent nmsu 1:7        | 20 percent prem-w 1:7       | 18 percent prem-w 1:7       | higher | young ones need more
# What both sources hold.
hay-from          | 14 day vsr 1:4.2           | 30 day common-practice -    | 14 day vsr 1:4.2            | lower  | the cud begins sooner
grass-by          | 30 day common-practice -   | 30 day common-practice -    | 30 day common-practice -    | lower  | it must learn to graze
ring-from         | 24 h fwi-ring 2:6a         | 24 h nsa-2026 2:6a          | 24 h fwi-ring 2:6a          | higher | pain keeps it from first milk
lockjaw-from      | 3 day qld-tet -            | 7 day agriorbit-tet -       | 3 day qld-tet -             | lower  | lockjaw is thought of sooner
lockjaw-to        | 10 day purdue-tet 2:4      | 30 day purdue-tet 2:4       | 30 day purdue-tet 2:4       | higher | it is thought of for longer
ring-until        | 6 day nfu-assurewel 2:6a   | 7 day ni-sr-2012 2:6a       | 6 day nfu-assurewel 2:6a    | lower  | the law, and less pain
law-vet-from      | 90 day nfu-assurewel 2:6a  | 90 day ava-2016 2:6a        | 90 day nfu-assurewel 2:6a   | lower  | the law, and less pain
law-ni-ring       | 7 day ni-sr-2012 2:6a      | 7 day ni-sr-2012 2:6a       | 7 day ni-sr-2012 2:6a       | lower  | the law
law-ca-pain       | 6 week producer-2014 2:6a  | 6 week producer-2014 2:6a   | 6 week producer-2014 2:6a   | lower  | the law
law-ca-vet        | 10 week producer-2014 2:6a | 10 week producer-2014 2:6a  | 10 week producer-2014 2:6a  | lower  | the law
law-nz-ring       | 182 day anexa 2:6a         | 182 day anexa 2:6a          | 182 day anexa 2:6a          | lower  | the law: six months
weigh-first       | 1 day common-practice -    | 7 day common-practice -     | 3 day common-practice -     | lower  | a poor doer is seen sooner
# Before that a full belly hides it.
weigh-every       | 7 day common-practice -    | 7 day common-practice -     | 7 day common-practice -     | lower  | a check is seen sooner
vaccine-uncovered-from | 2 week rangi 2:6b     | 4 week umd 2:6b             | 3 week umd 2:6b             | lower  | nothing guards it
# Two weeks is one clinic's.
vaccine-uncovered-by | 4 week umd 2:6b         | 4 week umd 2:6b             | 4 week umd 2:6b             | lower  | nothing guards it
vaccine-uncovered-again | 6 week umd 2:6b      | 10 week page-fwi 2:6b       | 7 week umd 2:6b             | lower  | one dose does not last
# Four weeks after the first, which suits both sources.
vaccine-covered-from | 6 week umd 2:6b         | 8 week umd 2:6b             | 6 week umd 2:6b             | lower  | its mother's cover runs out
vaccine-covered-by | 8 week umd 2:6b           | 8 week umd 2:6b             | 8 week umd 2:6b             | lower  | its mother's cover runs out
vaccine-covered-again | 9 week umd 2:6b        | 12 week umd 2:6b            | 10 week umd 2:6b            | lower  | one dose does not last
# Four weeks after the first.
vaccine-covered-last | 12 week umd 2:6b        | 12 week umd 2:6b            | 12 week umd 2:6b            | lower  | one dose does not last
coccidia-to       | 8 week nadis-cocc 2:1a     | 120 day smrm 2:1a           | 12 week adsr18 2:1a         | higher | late ones are watched too
# It is rare past three months.
worms-from        | 28 day ie-vet 2:1a         | 6 week adsr18 2:1a          | 28 day ie-vet 2:1a          | lower  | it is watched sooner
law-scot-ring     | 12 week sac-rings -        | 12 week sac-rings -         | 12 week sac-rings -         | lower  | the law
law-nsw-vet       | 182 day nsw-sheep -        | 182 day nsw-sheep -         | 182 day nsw-sheep -         | lower  | the law: six months
milk-cool-from    | 7 day cold-milk -          | 9 day cold-milk -           | 9 day cold-milk -           | higher | a small one chills
rams-apart        | 16 week common-practice -  | 150 day common-practice -   | 16 week common-practice -   | lower  | no ewe lamb is put in lamb
tag-by            | 182 day gov-wales-tags -   | 274 day gov-wales-tags -    | 182 day gov-wales-tags -    | lower  | the law: six and nine months
dung-test-from    | 6 week agriland-eggs -     | 6 week agriland-eggs -      | 6 week agriland-eggs -      | lower  | worms are found sooner
dung-test-every   | 3 week agriland-eggs -     | 3 week agriland-eggs -      | 3 week agriland-eggs -      | lower  | worms are found sooner
egg-count-high    | 400 count agriland-eggs -  | 500 count agriland-eggs -   | 400 count agriland-eggs -   | lower  | the vet is asked sooner
wean-watch        | 6 day wh81 1:7             | 16 day wh81 1:7             | 16 day wh81 1:7             | higher | it is looked at for longer
"""

NERVES_AND_STRAINING = """
turn-over       | 2 h common-practice -         | 4 h common-practice -       | 3 h common-practice -       | lower  | a sore is prevented
# With the milk feeds it can be kept up by night.
down-days       | 24 h welfare-cattle -         | 3 day common-practice 2:8   | 2 day common-practice 2:8   | lower  | it does not suffer longer
# The day is that of a grown cow, whose weight hurts her own legs.
ring-pain       | 30 min mellor-1989 -          | 4 h mellor-1991 -           | 3 h molony-1993 -           | lower  | a ring that sits wrong is seen sooner
# In newborn lambs about an hour, but in lambs of six days up to three: sooner would call a vet to every ring.
"""

OTHERS = """
flock-deaths    | 2 count common-practice -     | 3 count common-practice -  | 2 count common-practice -   | lower  | the vet hears sooner
deaths-window   | 12 h common-practice -        | 24 h common-practice -     | 24 h common-practice -      | higher | more deaths count as close
carcass-fresh   | 24 h pm-cards -               | 48 h bordermail -          | 24 h common-practice -      | lower  | a rotten one tells nothing
ewe-push        | 30 min bagley 2:7             | 3 h storey-289 2:7         | 30 min bagley 2:7           | lower  | a stuck lamb is helped sooner
ewe-restless    | 2 h bagley 2:7                | 6 h bagley 2:7             | 3 h bagley 2:7              | lower  | a ewe that does not open is seen sooner
# To feel inside is advised after two to three; up to six hours can be right.
afterbirth-by   | 2 h wikivet-birth -           | 18 h msd-afterbirth -      | 12 h louisa-vet -           | lower  | a kept lamb is found sooner
# The manual counts it as held back from 12 to 18; in most it drops within six.
courses-failed  | 2 count nadis-ji 2:3          | 2 count nadis-ji 2:3       | 2 count nadis-ji 2:3        | lower  | it suffers no longer
"""

THIN_HEAT_ORPHAN = """
gain-days       | 1 day common-practice -       | 7 day common-practice -    | 3 day common-practice -     | lower  | it is seen sooner that more milk does not help
# A single day is lost in a full or empty belly.
thin-look       | 12 h common-practice -        | 24 h common-practice -     | 12 h common-practice -      | lower  | pale can turn to white
cow-anaemia-from | 1 week fwi96-start -         | 1 week animalia-cow -      | 1 week animalia-cow -       | lower  | its gums are looked at sooner
cow-anaemia-to  | 2 week fwi96-start -          | 3 week animalia-cow -      | 3 week animalia-cow -       | higher | its gums are looked at for longer
nematodirus-from | 4 week fj-nem 2:1a           | 6 week adsr18 2:1a         | 4 week fj-nem 2:1a          | lower  | it is thought of sooner
nematodirus-to  | 12 week adsr18 2:1a           | 12 week fj-nem 2:1a        | 12 week adsr18 2:1a         | higher | it is thought of for longer
cooling-check   | 5 min common-practice -       | 10 min common-practice -   | 5 min common-practice -     | lower  | cooling too far is seen sooner
cooling-stop    | 39 degC berry-heat -          | 40 degC common-practice -  | 40 degC common-practice -   | higher | a small lamb is not chilled
burn-cool       | 5 min adelaide-burns -        | 30 min greencross-burns -  | 10 min propet-burns -       | lower  | a small lamb is not chilled
# Five minutes are the least that a page for pets asks.
"""

HEAD_WOUNDS_POISON = """
stitch-window | 3 h ljworld-wounds -      | 6 h cutting-edge -        | 4 h cutting-edge -          | lower  | germs have less time
# Where all three meet; it is stitched late sooner than not at all.
egg-hatch     | 8 h levot-fly -           | 24 h levot-fly -          | 8 h levot-fly -             | lower  | maggots are seen sooner
orf-heals     | 2 week nadis-skin 2:5     | 6 week nadis-2006 2:5     | 4 week nadis-skin 2:5       | lower  | the vet hears sooner
# Where all three meet: most heal by then, and one that has not is looked at again.
eye-better    | 2 day common-practice -   | 5 day common-practice -   | 3 day common-practice -     | lower  | the vet hears sooner
# No source.
yew-kills     | 2 h omafra-yew -          | 3 h ifj-yew -             | 2 h omafra-yew -            | lower  | nobody waits
plant-watch   | 48 h ifj-yew -            | 48 h ifj-yew -            | 48 h ifj-yew -              | higher | it is watched for longer
grain-signs   | 24 h dairy-grain -        | 36 h dairy-grain -        | 36 h dairy-grain -          | higher | it is watched for longer
dose-blind    | 3 day meling-closantel -  | 2 week flock-closantel -  | 2 week flock-closantel -    | higher | it is watched for longer
"""

CUPBOARD = """
powder-per-lamb | 5 kg bsap69 1:4.1            | 13 kg ifj-art 1:4.1       | 13 kg ifj-art 1:4.1         | higher | the milk need not change halfway
stock-weight    | 2.5 kg vsheet 1:7            | 6 kg teag-col 1:7         | 5 kg teag-col 1:7           | higher | no lamb finds the shelf empty
# The heaviest of the three is for singles, and a bummer is more likely a twin or a triplet.
"""


def _figure(text: str) -> Figure:
    value, unit, source, place = text.split()
    amount, _, weight = value.partition("/")
    return Figure(float(amount) / float(weight or 1), unit, source, place)


def _rows(*tables: str) -> dict[str, Row]:
    rows: dict[str, Row] = {}
    for line in "".join(tables).splitlines():
        if line and not line.startswith("#"):
            name, low, high, takes, safer, why = (cell.strip() for cell in line.split("|"))
            assert name not in rows, f"{name} stands here twice"
            rows[name] = Row(_figure(low), _figure(high), _figure(takes), safer, why)
    return rows


ROWS = _rows(
    COLD,
    FIRST_MILK,
    FEEDING,
    SCOURS,
    BELLY_AND_BIRTH,
    CHEST_AND_LEGS,
    RAISING,
    NERVES_AND_STRAINING,
    OTHERS,
    THIN_HEAT_ORPHAN,
    HEAD_WOUNDS_POISON,
    CUPBOARD,
)
"""Every number's row, by its name in the guide."""
