"""The app under test, its screen as text, and every kind of screen there is."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import UTC, datetime, timedelta
from functools import lru_cache
from pathlib import Path
from random import Random

from rich.segment import Segment
from textual.events import Key
from textual.pilot import Pilot
from textual.strip import Strip

from triage.casebook.opening import Opened, open_casebook
from triage.clock import Now
from triage.guide.find import knowledge_root
from triage.guide.model import Guide
from triage.guide.read import read_guide
from triage.holding.holding import Holding
from triage.page.page import Block
from triage.page.wall import Wall
from triage.practice.dealing import Dealer
from triage.reading.collection import Collection
from triage.reading.pages import statement_blocks
from triage.review.queue import Due
from triage.review.signing import Signer, Signing
from triage.review.standing import Review
from triage.screens.app import LambApp
from triage.screens.view import View
from triage.session import Session
from triage.session.desk import House
from triage.session.keeping import Keeping
from triage.session.practice.who import School, WhoRoom
from triage.session.reading import ReadingRoom
from triage.session.signing import SigningRoom
from triage.walk import Walk

NOW = Now(datetime(2026, 2, 11, 2, 10, tzinfo=UTC), UTC)

HOLDING = Holding(caller="Ann Field", place="Hill Farm", vet="01632 960111", out_of_hours="01632 960222")
"""Invented, as every name and number in the tests is; the numbers are of the range kept for fiction."""

NIGHT: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("Blue 7", ("5", "36.2", "3h", "d", "l", "3", "1", "60", "2", "1", "37.4 at 2:05", "b")),
    ("Red [/] 12", ("6", "39.3", "1", "5", "2h", "6", "4.2kg")),
    ("Third of three", ("6",)),
)
"""An invented night of three lambs: a name and what is typed for each."""


def app_of(guide: Guide, ascii_only: bool = False) -> LambApp:
    """Return the app at the first question, at a fixed time, with nothing kept."""
    return LambApp(Session(Walk(guide), vet="01632 960111", clock=lambda: NOW), ascii_only)


def strips_of(pilot: Pilot[None]) -> list[Strip]:
    """Return what is on the screen, line by line. The one place that reads Textual's compositor."""
    return pilot.app.screen._compositor.render_strips()


def screen_of(pilot: Pilot[None]) -> str:
    """Return what is on the screen, as text."""
    lines = ("".join(segment.text for segment in strip).rstrip() for strip in strips_of(pilot))
    return "\n".join(lines) + "\n"


def segments_of(pilot: Pilot[None]) -> list[Segment]:
    """Return what is on the screen, as pieces of one style each."""
    return [segment for strip in strips_of(pilot) for segment in strip]


COLD = ("5", *"36.2", "enter", *"3h", "enter")
FIRST_MILK = ("6", *"39.3", "enter", "1", "5", *"2h", "enter", "6", *"4.2kg", "enter")

TO_THE_TALK = ("d", "1", "1", "1", "d", "1", "1", "d")
"""The keys that answer every question of the first case that a new helper meets, not all of them well."""

PLACES: Mapping[str, Sequence[str]] = {
    "lambs": (),
    "first": ("1",),
    "measure": ("1", "5", *"36"),
    "picked": ("1", "down", "down"),
    "told": ("1", "9"),
    "act": ("1", *COLD),
    "end": ("1", *FIRST_MILK),
    "how": ("1", *COLD, "question_mark"),
    "working": ("1", *FIRST_MILK, "w"),
    "answers": ("1", *COLD, "a"),
    "lamb": ("2", "l"),
    "card": ("2", "l", "c"),
    "card-name": ("2", "l", "c", "1", *"Blue"),
    "note-feed": ("2", "l", "3"),
    "note-amount": ("2", "l", "3", "1"),
    "note-words": ("2", "l", "7", *"It"),
    "note-raising": ("2", "l", "9"),
    "plan": ("2", "l", "p"),
    "plan-duty": ("2", "l", "p", "1"),
    "vet": ("2", "v"),
    "vet-said": ("2", "v", "1"),
    "holding": ("h",),
    "practice-home": (),
    "practice-story": ("1",),
    "practice-looked": ("1", "2", "1"),
    "practice-how-soon": ("1", "2", "d"),
    "practice-marked": ("1", "2", "d", "1", "1", "1", "3"),
    "practice-talk": ("1", "2", *TO_THE_TALK),
    "practice-side": ("1", "2", *TO_THE_TALK, "a"),
    "practice-working": ("1", "2", *TO_THE_TALK, "w"),
    "practice-drill": ("2", "enter"),
    "practice-shown": ("3",),
    "read-contents": (),
    "read-typed": (*"ud",),
    "read-list": ("2",),
    "read-topic": (*"cold", "enter"),
    "read-map": (*"map/navel", "enter"),
    "read-end": (*"not-warming", "enter"),
    "read-number": (*"severe-chill", "enter"),
    "read-sum": (*"sum/milk-feed", "enter"),
    "read-used": (*"severe-chill", "enter", "2"),
    "read-found": (*"thermometre", "enter"),
    "sign-who": (),
    "sign-as": (*"Ann Field", "enter"),
    "sign-page": (*"Ann Field", "enter", "1", "enter"),
    "sign-object": (*"Ann Field", "enter", "1", "enter", "3", *"Too"),
    "sign-through": (*"Ann Field", "enter", "1", "enter", "4", "4"),
}
"""Every kind of screen, by the keys that lead to it from the list of the invented night's lambs, or from the
first page of practice."""


def night(guide: Guide, folder: Path, hours: float = 0.5) -> Session:
    """Return a session so long after the invented night began, at the list of its lambs."""
    path = folder / "casebook.sqlite"
    for name, lines in NIGHT:
        held = session_at(guide, path, NOW)
        for line in ("1", *lines) if held.desk.rooms else lines:
            held.take(line)
        for line in ("l", "c", "1", name):
            held.take(line)
        held.desk.keeping.book.close()  # type: ignore[union-attr]
    return session_at(guide, path, Now(NOW.moment + timedelta(hours=hours), UTC))


def session_at(guide: Guide, path: Path, now: Now) -> Session:
    """Return a session on a casebook at a fixed time, as the command opens one."""
    opened = open_casebook(path)
    assert isinstance(opened, Opened)
    session = Session(Walk(guide), clock=lambda: now, house=House(Keeping(opened.book), HOLDING))
    if opened.book.count_open():
        session.open("lambs")
    return session


@lru_cache(maxsize=1)
def dealer_of(edition: str) -> Dealer:
    """Return what deals the shipped guide's cases, made once for all screens."""
    guide = read_guide(knowledge_root()).guide
    assert guide is not None
    assert guide.front.edition == edition
    return Dealer(guide)


def practising(guide: Guide) -> Session:
    """Return a session in the rooms of practice, with an invented helper who has done nothing yet."""
    session = Session(Walk(guide), vet="01632 960111", clock=lambda: NOW)
    school = School(session, rng=Random(1))
    school._dealer = dealer_of(guide.front.edition)
    school.named("Imani")
    session.desk.open(WhoRoom(school))
    return session


@lru_cache(maxsize=1)
def collection_of(edition: str) -> Collection:
    """Return the statements of the shipped guide, joined once for all screens."""
    guide = read_guide(knowledge_root()).guide
    assert guide is not None
    assert guide.front.edition == edition
    return Collection(guide)


def reading(guide: Guide) -> Session:
    """Return a session at the contents of reading."""
    session = Session(Walk(guide), vet="01632 960111", clock=lambda: NOW)
    session.desk.open(ReadingRoom(session, collection_of(guide.front.edition), alone=True))
    return session


def signing(guide: Guide) -> Session:
    """Return a session in which two statements are to be signed, by somebody who has to give a name first."""
    session = Session(Walk(guide), clock=lambda: NOW)
    whole = collection_of(guide.front.edition).guide
    review = Review({"node/not-warming": "1" * 20, "number/severe-chill": "2" * 20}, ())
    queue = tuple(Due(key, "never reviewed", 0, 1.0) for key in review.seals)

    def begin(signer: Signer) -> Signing:
        return Signing(review, queue, signer, Path("own"), "2026-02-11", guide.front.edition)

    def tell(key: str, session: Session) -> tuple[Block, ...]:
        return statement_blocks(Wall(whole, session.system), key)

    session.desk.open(SigningRoom(session, begin, tell))
    return session


SIGNS = {"question_mark": "?"}


def session_for(guide: Guide, folder: Path, place: str) -> Session:
    """Return the session in which a kind of screen is found."""
    match place.partition("-")[0]:
        case "practice":
            return practising(guide)
        case "read":
            return reading(guide)
        case "sign":
            return signing(guide)
    return night(guide, folder / place)


async def go_to(pilot: Pilot[None], guide: Guide, folder: Path, place: str) -> None:
    """Take the app to a kind of screen, half an hour into the invented night."""
    app = pilot.app
    assert isinstance(app, LambApp)
    book = app.session.desk.keeping.book
    if book is not None:
        book.close()
    app.session = session_for(guide, folder, place)
    app.session.watch()
    app.view = View(ascii=app.view.ascii)
    for key in PLACES[place]:
        # Straight to the app: a pilot waits for the machine to be idle after each key.
        app.on_key(Key(key, SIGNS.get(key, key if len(key) == 1 else None)))
    app.draw()
    await pilot.pause(0.01)
