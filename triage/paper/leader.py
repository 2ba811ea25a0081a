"""Cases to play aloud with somebody: the front of each sheet to read from, the answers on its back."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from triage.paper.laying import laid
from triage.paper.pieces import TURN, Part, Piece, Rows, cell, gap, head_of, listed, row, text, whole
from triage.paper.setting import BODY, HEAD, LABEL, NOTE, SMALL, STRONG
from triage.practice.leading import Asked, ToPlay

NAME = "Cases to play aloud"
HOW = (
    "Read the story out. Tell a finding only when it is asked for. Then ask the questions, and turn over. "
    "Talk about where you part, and why. Take your time."
)
INVENTED = "All of it is invented. Practice is no licence, and on the night the guide stays open."
TELL = (50.0, 134.0)
SHORT_LINES = 40
"""Signs of a line up to which the lines of a question stand side by side."""


def leader_parts(plays: Sequence[ToPlay]) -> Iterator[Part]:
    """Yield the sheets of each case: what is read from, and then the answers, on the back of its leaf."""
    for number, play in enumerate(plays, 1):
        front = tuple(_front(number, play))
        back = tuple(_back(number, play))
        yield TURN
        yield from front
        yield TURN
        yield from back
        if (len(laid(front)) + len(laid(back))) % 2:
            # So that the next case begins a leaf of its own.
            yield TURN
            yield gap(1)


def _front(number: int, play: ToPlay) -> Iterator[Part]:
    yield text(f"{NAME}: {number}", HEAD, "h2", leads=True)
    yield text(f"{HOW} {INVENTED}", SMALL)
    story, *facts = play.story or ("",)
    yield whole((text(story, BODY), *([text(" ".join(facts), BODY)] if facts else [])))
    rows = tuple(row([cell(label, LABEL, TELL[0]), cell(said, NOTE, TELL[1])]) for label, said in play.tell)
    yield Rows(TELL, head_of(("When asked for", "say"), TELL, LABEL), rows)
    yield text("When enough was seen, ask", HEAD, "h2", leads=True)
    for asked in play.asked:
        yield _question(asked)


def _question(asked: Asked) -> Piece:
    lines = [f"{letter}. {words}" for letter, words in asked.lines]
    if max(map(len, lines)) <= SHORT_LINES + len("A. "):
        shown = [text("; ".join(lines) + ".", NOTE)]
    else:
        shown = [listed(lines, NOTE, mark="")]
    supposed = [text(asked.supposed, NOTE)] if asked.supposed else []
    return whole((*supposed, text(asked.heading, LABEL), *shown))


def _back(number: int, play: ToPlay) -> Iterator[Part]:
    yield text(f"{number}. The guide comes to: {play.title}", HEAD, "h2", leads=True)
    for asked in play.asked:
        right = text(f"{asked.row}: {asked.right}", STRONG)
        yield whole((right, listed(asked.whys, NOTE, mark="")) if asked.whys else (right,))
    if play.working:
        yield whole((text("How the amount came about", HEAD, "h3"), listed(play.working, NOTE)))
    if play.trap:
        yield whole((text("What misleads here", HEAD, "h3"), text(play.trap, BODY)))
    yield whole((text("Remember", HEAD, "h3"), text(play.remember, BODY)))
    if play.sources:
        yield whole((text("From", HEAD, "h3"), *(text(source, SMALL) for source in play.sources)))
