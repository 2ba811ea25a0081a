"""Moving a lamb's case to another machine, or to a vet: one JSON file.

The file, version 1. All times are ISO 8601 with their offset, as `2026-02-11T02:10:00+00:00`.

    moved        what this file is and its version: 1
    edition      the edition of the guidance on the machine it came from
    written      when it was written
    lamb         id, name, added, born (or null), born_guessed, birth_type, sex
    cases        a list, the oldest first; each has
      id, begun, touched, edition, closed (or null)
      look       null, or {set_at, due}
      moves      a list in order; each is
                 {"finding": name, "value": number or choice (or "unsure": true in its place),
                  "said": as typed, "at": time or null}, or
                 {"act": name, "at": time or null}
    observations a list, the oldest first; each has id, kind, at, written,
                 parts: a map of part to number or text

Times lie between the years 1900 and 9000. Names and ids have at most 200 signs, other texts 100,000, and
the file 20 MB. `sex` is ewe, ram, wether or empty; an end of a look is never before its beginning. No
field is left out and none is added; no id stands twice. Numbers are in the unit of their finding in the
guide, none larger than a thousand million. Moves that were taken back are not moved. Names that a guide
does not know are kept as they are.

A file in which anything else stands is refused with the place, and a later version of it by name. What
is in the casebook already, by its id, stays as it is: the lamb's card, its walks and its notes.
"""
