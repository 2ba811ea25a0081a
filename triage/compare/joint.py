"""Both walks of every lamb at once: the old guide and the new one, followed side by side to their ends.

A state is a node in either guide, what is known there that still matters, and the urgency so far. Questions
whose answers are known are passed in silence, within a step. Of two walks the one goes on that has more
before it, so that both stand at the same node again soon after a place where they differ. A state is left
aside where both guides are alike from its nodes on and know the same: no lamb ends differently there.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Sequence

from triage.check.search.packing import Known
from triage.check.search.ways import NOWHERE, ActWays, AskWays, EndWays
from triage.compare.drift import ABREAST, Drift, answered, did, forgot, still_waits, waiting_of, without_acts
from triage.compare.states import ACT, BOTH, STUCK, Found, Joint, Last, Move, Outcome, Silent, Task, note


class Search:
    """One search."""

    def __init__(self, task: Task) -> None:
        self.paths, self.ahead, self.colours = task.paths, task.ahead, task.colours
        self.watched, self.looked_for, self.most = task.watched, task.looked_for, task.most
        self.packing = task.paths[0].live.packing
        self.found = Found()
        self._seen: set[Joint] = set()
        self._states: list[Joint] = []
        self._waiting: deque[int] = deque()
        self._classes: dict[tuple[int, int, int, bool], list[tuple[int, int, int]]] = {}
        self._ways: tuple[dict[tuple[int, Known], Silent], ...] = ({}, {})

    def run(self) -> Found:
        """Search from both ways in."""
        self._open()
        while self._waiting:
            if len(self._states) > self.most:
                self.found.complete = False
                break
            state = self._waiting.popleft()
            self._expand(state, self._states[state])
        self.found.states = len(self._states)
        return self.found

    def _open(self) -> None:
        """Begin: with what a walk is about, where a guide has that taken as known."""
        first = self._told()
        openings = sorted(first, key=lambda each: len(each[0]))
        nobody = self.paths[0].scale.nobody
        start = Joint(self.paths[0].start, self.paths[1].start, 0, 0, nobody, nobody, ABREAST)
        for moves, known in openings:
            last: Last | None = None
            for move in moves:
                self.found.before.append(last)
                self._states.append(start)
                last = len(self._states) - 1, move
            self._settle(last, start._replace(old_known=known[0], new_known=known[1]), True, True)

    def _told(self) -> Iterator[tuple[tuple[Move, ...], tuple[Known, Known]]]:
        """Yield each way to begin: the moves that tell what it is about, and what is known then."""
        told = [each.matter for each in self.paths]
        ways: list[tuple[tuple[Move, ...], int]] = [((), 0)]
        for finding in sorted({finding for finding, _ in told if finding}):
            taken = {answer for each, answer in told if each == finding}
            ways = [
                (moves if taken == {answer} else (*moves, Move(BOTH, finding, answer)), known | bits)
                for moves, known in ways
                for answer in range(self.paths[0].answers(finding))
                for bits in [self.packing.bits(finding, answer)]
            ]
        for moves, known in ways:
            yield moves, (known, known)

    def _expand(self, state: int, here: Joint) -> None:
        old, new = self._at(0, here.old), self._at(1, here.new)
        if isinstance(old, ActWays) and isinstance(new, ActWays) and self._twins(here):
            self._act(state, here, BOTH)
            return
        side = self._next(here, old, new)
        if isinstance(self._at(side, here.at(side)), AskWays):
            self._ask(state, here, side)
        else:
            self._act(state, here, side)

    def _at(self, side: int, at: int) -> AskWays | ActWays | EndWays | None:
        return None if at == STUCK else self.paths[side].nodes[at]

    def _twins(self, here: Joint) -> bool:
        return self.paths[0].twin[here.old] == self.paths[1].twin[here.new]

    def _next(self, here: Joint, old: object, new: object) -> int:
        """Return which walk goes on: one that is not over, and of two the one with more before it."""
        if old is None or isinstance(old, EndWays):
            return 1
        if new is None or isinstance(new, EndWays):
            return 0
        return int(self.paths[1].order[here.new] < self.paths[0].order[here.old])

    def _ask(self, state: int, here: Joint, side: int) -> None:
        ask = self.paths[side].nodes[here.at(side)]
        assert isinstance(ask, AskWays)
        waits = waiting_of(here.drift, ask.finding) if here.drift.waiting else None
        other = self._at(1 - side, here.at(1 - side))
        meets = waits is None and isinstance(other, AskWays) and other.finding == ask.finding
        for answer, mine, theirs in self._answers(side, here, ask.finding, waits is None):
            known = [here.old_known, here.new_known]
            known[side] += mine
            if waits is None:
                known[1 - side] |= theirs
                drift = here.drift
            else:
                drift = answered(here.drift, side, ask.finding, answer)
            after = here._replace(old_known=known[0], new_known=known[1], drift=drift)
            self._settle(
                (state, Move(side, ask.finding, answer)), after, meets or not side, meets or bool(side)
            )

    def _answers(self, side: int, here: Joint, finding: int, shared: bool) -> list[tuple[int, int, int]]:
        """Return an answer of each kind that a guide still tells apart, as bits for either walk.

        The bits for the walk that is asked come first.
        """
        key = (side, here.at(side), here.at(1 - side), shared)
        if key not in self._classes:
            mine = self.paths[side].live.apart(finding, here.at(side), 0)
            at = here.at(1 - side)
            if not shared:
                theirs = self.paths[1 - side].live.alike(finding, -1)
            elif at == STUCK:
                theirs = dict.fromkeys(mine, 0)
            else:
                theirs = self.paths[1 - side].live.apart(finding, at, 0)
            first: dict[tuple[int, int], int] = {}
            for answer in mine:
                first.setdefault((mine[answer], theirs[answer]), answer)
            self._classes[key] = [
                (
                    answer,
                    self.packing.bits(finding, mine[answer]),
                    self._kept(1 - side, at, self.packing.bits(finding, answer)) if shared else 0,
                )
                for answer in first.values()
            ]
        return self._classes[key]

    def _kept(self, side: int, at: int, known: Known) -> Known:
        """Return what of all that is known still matters at a node."""
        if at == STUCK:
            return 0
        same, moved = self.paths[side].live.keep(at, 0)
        kept = known & same
        for mask, firsts in moved:
            kept |= firsts[known & mask]
        return kept

    def _act(self, state: int, here: Joint, side: int) -> None:
        known, drift, at = [here.old_known, here.new_known], here.drift, [here.old, here.new]
        sides = (0, 1) if side == BOTH else (side,)
        last: Last = state, Move(side, ACT, 0)
        twin = self.paths[sides[0]].twin[here.at(sides[0])]
        for each in sides:
            ways = self.paths[each].nodes[at[each]]
            assert isinstance(ways, ActWays)
            for finding in ways.forget:
                known[each] &= ~self.packing.mask(finding)
                drift, waited = forgot(drift, each, finding)
                if waited is not None:
                    known[each] |= self.packing.bits(finding, waited)
            if ways.counter:
                times = (self.packing.answer(known[each], ways.counter) or 0) + 1
                known[each] &= ~self.packing.mask(ways.counter)
                known[each] |= self.packing.bits(ways.counter, times)
            at[each] = ways.targets[0]
            if side != BOTH:
                drift, more = did(drift, each, twin)
                if twin in self.watched and (more <= 0 if not each else more >= 0):
                    note(self.found.both_did, twin, last)
        if side == BOTH and twin in self.watched:
            note(self.found.both_did, twin, last)
        after = Joint(at[0], at[1], known[0], known[1], here.old_rank, here.new_rank, drift, here.met)
        self._settle(last, after, 0 in sides, 1 in sides)

    def _settle(self, last: Last | None, here: Joint, old: bool, new: bool) -> None:
        """Go on in silence on the walks named, and keep the state come to, or what the lamb came to."""
        at, known, rank = (
            [here.old, here.new],
            [here.old_known, here.new_known],
            [here.old_rank, here.new_rank],
        )
        marked = here.met
        for side, moved in ((0, old), (1, new)):
            if moved and at[side] != STUCK:
                at[side], known[side], least, met = self._on(side, at[side], known[side])
                rank[side] = min(rank[side], least)
                marked |= met
        drift = here.drift
        if drift is not ABREAST:
            drift = self._tidy(last, at, drift)
        there = Joint(at[0], at[1], known[0], known[1], rank[0], rank[1], drift, marked)
        if self._over(0, there.old) and self._over(1, there.new):
            self._came(last, there)
        elif not self._alike(there):
            self._meet(last, there)
        else:
            self._apart(last, drift)

    def _on(self, side: int, at: int, known: Known) -> Silent:
        """Return where a walk waits after what it passes in silence."""
        kept = self._kept(side, at, known)
        key = (at, kept)
        if key not in self._ways[side]:
            self._ways[side][key] = self._passed(side, at, kept)
        return self._ways[side][key]

    def _passed(self, side: int, at: int, known: Known) -> Silent:
        paths, rank = self.paths[side], self.paths[side].scale.nobody
        met = False
        while True:
            met |= at in self.looked_for[side]
            ways = paths.nodes[at]
            if isinstance(ways, AskWays):
                answer = self.packing.answer(known, ways.finding)
                if answer is None:
                    break
                branch = ways.branch_at[answer]
                if branch == NOWHERE:
                    return STUCK, 0, rank, met
                rank, at = min(rank, ways.ranks[branch]), ways.targets[branch]
            elif isinstance(ways, ActWays):
                times = self.packing.answer(known, ways.counter) if ways.counter else None
                if not ways.counter or (times or 0) < ways.at_most:
                    break
                at = ways.targets[1]
            else:
                break
            known = self._kept(side, at, known)
        return at, known, min(rank, self.ahead[side].sure[at]), met

    def _over(self, side: int, at: int) -> bool:
        return at == STUCK or isinstance(self.paths[side].nodes[at], EndWays)

    def _alike(self, here: Joint) -> bool:
        """Whether nothing that any such lamb can still come to differs."""
        return (
            here.old_known == here.new_known
            and here.old_rank == here.new_rank
            and here.old != STUCK != here.new
            and self.colours[0][here.old] == self.colours[1][here.new]
            and not here.drift.waiting
        )

    def _tidy(self, last: Last | None, at: Sequence[int], drift: Drift) -> Drift:
        """Drop what waits in vain, and the acts in which the walks differ for good: these are found."""
        asks = [0 if here == STUCK else self.ahead[side].asks[here] for side, here in enumerate(at)]
        waiting = tuple(each for each in drift.waiting if still_waits(each, asks))
        acts = [0 if here == STUCK else self.ahead[side].acts[here] for side, here in enumerate(at)]
        settled = {act for act, more in drift.acts if not acts[1 if more > 0 else 0] >> act & 1}
        self._apart(last, drift._replace(acts=tuple(each for each in drift.acts if each[0] in settled)))
        tidied = without_acts(drift._replace(waiting=waiting), settled)
        return tidied if tidied != ABREAST else ABREAST

    def _apart(self, last: Last | None, drift: Drift) -> None:
        for act, more in drift.acts:
            note(self.found.acts, (act, more > 0), last)

    def _came(self, last: Last | None, here: Joint) -> None:
        self._apart(last, here.drift)
        outcome = Outcome(here.old, here.new, here.old_rank, here.new_rank, here.met)
        note(self.found.outcomes, outcome, last)

    def _meet(self, last: Last | None, here: Joint) -> None:
        if here not in self._seen:
            self._seen.add(here)
            self.found.before.append(last)
            self._states.append(here)
            self._waiting.append(len(self._states) - 1)
