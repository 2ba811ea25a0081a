"""The guide's numbers typed a second time, from the sources, before a look at `knowledge/numbers.yaml`.

Where the guide then took another figure for a good reason, the row was changed, and a line below it that begins
with # says why. Such a line also says why the guide need not take the safest published figure.

A row holds the lowest and the highest figure published for a number, the figure that the guide should take, the
side that is safer for the lamb, and why. A figure is `value unit source place` in the unit that the source
itself prints; a value may be a quotient, where a source prints an amount for a weight.

The place is a section of our notes on the sources: `1:` for chill, milk, fostering, weaning and warmth, `2:` for
illness and care. `-` is no place: no source prints a figure, and the range is what a sheep vet would accept.
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


ROWS = _rows(COLD, FIRST_MILK, FEEDING, SCOURS, BELLY_AND_BIRTH, CUPBOARD)
"""Every number's row, by its name in the guide."""
