"""An own folder to begin with: what it is for, and examples that change nothing until they are renamed."""

from __future__ import annotations

from collections.abc import Mapping

ASLEEP = ".example"
"""At the end of a file's name: it is not read, as only names that end in .yaml are."""

README = "READ-ME.txt"

_README = """\
THIS FOLDER FITS THE GUIDE TO YOUR HOLDING

The guide that came with the program stays as it is. What stands in this folder is laid over it each time, so
an update of the program takes nothing of yours away.

HOW TO BEGIN
1. Read an example here, such as numbers.yaml.example. It changes nothing yet.
2. Copy it without the end of its name: numbers.yaml. Change what you want in the copy.
3. Run: triage check
   It says what is wrong, with file, line and column, until nothing is.
4. Open the guide. While there is a mistake your folder is not in use, or that part is closed. Each page then
   says so.

HOW IT IS LAID OVER
- A file here goes over the file of the same path in the guide: topics/navel.yaml over topics/navel.yaml.
- You write only what is other: the entry's name, and under it the fields that change.
- A name with a plus adds to a list:   cautions+:
  The same name without it takes the place of the whole list.
- A topic, a finding or a how-to of your own is a new file here, written as in the guide.
- Nothing can be taken out.

WHAT IT MAY DO
- Move a number to its safer side, inside what is published.
- Add cautions, steps, sources, words, topics and rules.
- Call a vet sooner.
- Say texts in other words, or in another language: triage new words

WHAT IT MAY NOT DO, unless a vet has signed that very change: triage sign --as vet
- Move a number off its safer side.
- Take away a caution, a step, a tag, or the words on when to phone.
- Change a rule, or whom a page is for.
- Let any lamb come to a page that is less urgent than before.
Nobody can sign away danger signs, urgencies, the way in, or what is published.

WHERE IT LIES
Beside the file of your holding, as 'own'. To keep it elsewhere, set TRIAGE_OWN to that folder.
TRIAGE_OWN set to nothing leaves it out.
"""

_NUMBER = """\
# A number on its safer side: a lamb that is being warmed is looked at sooner here.
# To put it to use, copy this file to: numbers.yaml
warming-check:
  # Inside what is published for it, and not off its safer side.
  value: 15
  # Why this value; it takes the place of the note that was there.
  note: "15 is taken. Our warm box heats fast."
"""

_PAGE = """\
# One more caution on a page. The plus adds it to the list; no caution of the guide is lost.
# To put it to use, copy this file to: topics/navel.yaml
nodes:
  navel-bulge:
    cautions+:
      - Keep the dog out of its pen.
"""

_WORDS = """\
# The word that is used for it where you are, so that it is explained when it is met.
# To put it to use, copy this file to: glossary.yaml
scours:
  also+: [the skitters]
"""

EXAMPLES: Mapping[str, str] = {
    README: _README,
    f"numbers.yaml{ASLEEP}": _NUMBER,
    f"topics/navel.yaml{ASLEEP}": _PAGE,
    f"glossary.yaml{ASLEEP}": _WORDS,
}
"""Each file of a new own folder, by its path in there."""
