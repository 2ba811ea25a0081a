"""A comparison in the reader's words: sections in the order in which they matter, what is lost first."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from triage.compare.compared import ActDifference, Difference, LostCaution, LostRule, NumberMoved, Reworded
from triage.compare.parts import Part
from triage.compare.report.compared import Compared
from triage.compare.report.names import KINDS, Both
from triage.compare.words import Mark, marked
from triage.units import UNITS, Quantity, show

Marks = tuple[tuple[Mark, str], ...]

SHOWN = 3
"""Ways of losing one caution that are told in full; the others are counted."""


@dataclass(frozen=True)
class Entry:
    """One thing that differs."""

    head: str
    lines: tuple[tuple[str, str], ...] = ()
    """Each a word for what is told, and what is told."""
    marks: Marks = ()
    """A text with the words that are out of it and those that are in."""
    lamb: tuple[tuple[str, str], ...] = ()
    """What was asked of one such lamb, and its answers."""
    why: str = ""
    count: int = 1
    """How many things of the comparison are told in it."""


@dataclass(frozen=True)
class Section:
    """Entries of one kind. A section without any is told too: that nothing of the kind was found."""

    name: str
    title: str
    none: str
    entries: tuple[Entry, ...]
    lead: str = ""

    @property
    def count(self) -> int:
        """How many things it tells, which is more than its entries where some are told together."""
        return sum(each.count for each in self.entries)


def sections(compared: Compared) -> tuple[Section, ...]:
    """Return everything that differs, told in order."""
    teller = _Teller(compared)
    came = compared.comparison
    return (
        Section(
            "less-urgent",
            "Situations that now end less urgent",
            "No situation ends less urgent than before.",
            tuple(map(teller.difference, came.less_urgent)),
            "Read these first. Each is told once, with a lamb that shows it in as few answers as can be. How "
            "many situations it was found in says nothing of how common it is.",
        ),
        Section(
            "lost",
            "Cautions and rules that are lost",
            "No caution and no rule is lost.",
            (*map(teller.rule, came.rules_lost), *teller.cautions(came.lost_cautions)),
            "A caution is lost where an old page had it, and the page that the same lamb comes to now does "
            "not.",
        ),
        Section(
            "more-urgent",
            "Situations that now end more urgent",
            "No situation ends more urgent than before.",
            tuple(map(teller.difference, came.more_urgent)),
        ),
        Section(
            "elsewhere",
            "Situations that end on another page, or with other steps",
            "No situation ends as urgent as before and otherwise than before.",
            (*teller.together(came.elsewhere), *map(teller.act, came.on_the_way)),
            "What comes to one page by the same change is told together, with one lamb that shows it. The "
            "report in JSON has a lamb for each.",
        ),
        Section(
            "numbers",
            f"Numbers that were moved{_less_safe(came.numbers)}",
            "No number was moved.",
            tuple(map(teller.number, came.numbers)),
        ),
        Section(
            "statements",
            "What was added, taken away, renamed or changed otherwise",
            "Nothing was added, taken away or renamed.",
            tuple(teller.statements()),
        ),
        Section("words", "Words that changed", "No words changed.", tuple(map(teller.words, came.words))),
    )


def _less_safe(numbers: tuple[NumberMoved, ...]) -> str:
    """Return how many numbers went to the side that is less safe, which no urgency may show."""
    count = sum(each.off == "less safe" for each in numbers)
    return f" ({count} off the safer side)" if count else ""


def _part(part: Part) -> tuple[str, str]:
    return f"In '{part.field}'", f"was {part.old}; is {part.new}" if part.old else "other than before"


class _Teller:
    def __init__(self, compared: Compared) -> None:
        self.compared = compared
        self.names = Both(compared)
        self.old, self.new = self.names.old, self.names.new

    def difference(self, each: Difference) -> Entry:
        some = "1 situation" if each.states == 1 else f"{each.states:,} situations"
        lines = (
            ("Came to", self.old.page(each.old_end)),
            ("Comes to", self._now(each)),
            *self._met(each.met),
            ("Found", f"at the end of {some}"),
        )
        return Entry(self._head(each), lines, (), self.names.lamb(each.lamb), self._why(each.met))

    def together(self, came: tuple[Difference, ...]) -> Iterator[Entry]:
        """Yield an entry for all that comes to one page, as urgent as before, by the same changes."""
        groups: dict[tuple[str, ...], list[Difference]] = {}
        for each in came:
            how = (self._head(each), self._now(each), *self._sorted(each.met))
            groups.setdefault(how, []).append(each)
        for group in groups.values():
            yield self.difference(group[0]) if len(group) == 1 else self._group(group)

    def _group(self, group: list[Difference]) -> Entry:
        first = group[0]
        came = (("Came to", self.old.page(each.old_end)) for each in group)
        lines = (("Comes to", self._now(first)), *self._met(first.met), *came)
        lamb, why = self.names.lamb(first.lamb), self._why(first.met)
        return Entry(self._head(first), lines, (), lamb, why, len(group))

    def _head(self, each: Difference) -> str:
        before, after = self.old.urgency(each.old_urgency), self.new.urgency(each.new_urgency)
        return f"{before}, before; {after}, now" if before != after else f"{after}, as before"

    def _now(self, each: Difference) -> str:
        now = self.new.page(each.new_end)
        if each.new_page:
            return now
        steps = each.old_urgency == each.new_urgency
        return f"the same page{', with other steps' if steps else ''}: {now}"

    def _met(self, keys: frozenset[str]) -> tuple[tuple[str, str], ...]:
        if not keys:
            return ()
        return (("By", "; ".join(self.names.statement(key) for key in self._sorted(keys))),)

    def _why(self, keys: frozenset[str]) -> str:
        return self.compared.why(*self._sorted(keys))

    def _sorted(self, keys: frozenset[str]) -> list[str]:
        order = list(KINDS)
        return sorted(keys, key=lambda key: (order.index(key.partition("/")[0]), key))

    def cautions(self, lost: tuple[LostCaution, ...]) -> Iterator[Entry]:
        """Yield an entry for each caution: first those that a page itself no longer has."""
        by_text: dict[str, list[LostCaution]] = {}
        for each in sorted(lost, key=lambda each: each.old_page != each.new_page):
            by_text.setdefault(each.caution, []).append(each)
        for text, ways in by_text.items():
            yield self._caution(text, ways)

    def _caution(self, text: str, ways: list[LostCaution]) -> Entry:
        first = ways[0]
        lines: list[tuple[str, str]] = []
        for each in ways[:SHOWN]:
            if each.old_page == each.new_page:
                lines.append(("Lost on", self.old.page(each.old_page)))
            else:
                lines.append(("Came to", self.old.page(each.old_page)))
                lines.append(("Comes to", self.new.page(each.new_page)))
        if more := len(ways) - SHOWN:
            lines += (
                [("Also", f"Lost in the same way between {more:,} other pairs of pages.")] if more > 0 else []
            )
        lines += self._met(first.met)
        marks = marked(self.old.fill(text), self.new.fill(first.nearest)) if first.nearest else ()
        head = f"Caution: {self.old.fill(text)}"
        return Entry(head, tuple(lines), marks, self.names.lamb(first.lamb), self._why(first.met))

    def rule(self, each: LostRule) -> Entry:
        kind = "Never-rule" if each.never else "Rule"
        how = "; ".join(each.how) if each.how else "it is gone"
        lines = (("It stood because", self.old.fill(each.because)),)
        return Entry(f"{kind} {each.rule}: {how}", lines, why=self.compared.why(f"rule/{each.rule}"))

    def act(self, each: ActDifference) -> Entry:
        if each.old_act and each.new_act:
            head = f"On the way, other steps: {self.new.page(each.new_act)}"
        elif each.old_act:
            head = f"On the way, no longer done, or less often: {self.old.page(each.old_act)}"
        else:
            head = f"On the way, done now, or more often: {self.new.page(each.new_act)}"
        return Entry(head, self._met(each.met), (), self.names.lamb(each.lamb), self._why(each.met))

    def number(self, each: NumberMoved) -> Entry:
        key, system = f"number/{each.number}", self.compared.system
        by = f"{'up' if each.by > 0 else 'down'} by {self._apart(each)}"
        off = {"safer": ", toward the safer side", "less safe": ", off the safer side", "": ""}[each.off]
        lines = (
            ("Was", show(each.old, each.unit, system)),
            ("Is", show(each.new, each.unit, system)),
            ("Moved", f"{by}{off}"),
            ("Used by", "; ".join(map(self.names.statement, each.used)) or "nothing"),
        )
        return Entry(self.new.statement(key), lines, why=self.compared.why(key))

    def _apart(self, each: NumberMoved) -> str:
        """Return how far a number was moved; a difference of temperatures has no offset."""
        if UNITS[each.unit].dimension == "temperature":
            fahrenheit = self.compared.system == "us"
            degrees = abs(each.by) * (
                UNITS[each.unit].factor / UNITS["degF" if fahrenheit else "degC"].factor
            )
            return f"{degrees:.2f}".rstrip("0").rstrip(".") + (" \u00b0F" if fahrenheit else " \u00b0C")
        apart = Quantity(abs(each.by), each.unit)
        return show(apart.value, apart.unit, self.compared.system)

    def statements(self) -> Iterator[Entry]:
        """Yield what was added and taken away, renamed, and changed in a way that is told nowhere else."""
        came = self.compared.comparison
        for how, keys in (("Taken away", came.removed), ("Added", came.added)):
            for key in keys:
                yield Entry(f"{how}: {self.names.statement(key)}", why=self.compared.why(key))
        for was, now in came.renamed:
            name = was.partition("/")[2]
            yield Entry(f"Renamed: {self.names.statement(now)}, was {name}", why=self.compared.why(now, was))
        for key in came.otherwise:
            lines = tuple(_part(each) for each in self.compared.parts(key))
            yield Entry(f"Changed: {self.names.statement(key)}", lines, why=self.compared.why(key))

    def words(self, each: Reworded) -> Entry:
        head = f"{self.names.statement(each.key)}, {each.kind}"
        marks = marked(each.old, each.new)
        return Entry(head[:1].upper() + head[1:], (), marks, why=self.compared.why(each.key))
