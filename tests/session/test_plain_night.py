"""The plain face at night: the bell, the alarm, and the list of lambs as lines."""

from __future__ import annotations

from tests.session.conftest import Night
from triage import plain

COLD = ("5", "36.2", "3h", "d")


def test_a_due_look_is_said_while_a_line_is_waited_for(night: Night) -> None:
    """Nothing being typed, the plain face rings once and says whose look is due."""
    session, said = night.open(*COLD), list[str]()
    plain.ring(session, said.append)
    night.passes(20)

    plain.ring(session, said.append)
    plain.ring(session, said.append)

    assert said == ["\a** Look again now: Lamb of 02:10."]


def test_the_alarm_stands_first_on_a_page(night: Night) -> None:
    """A page in plain lines begins with what is due, then how urgent it is, then the lamb."""
    night.open(*COLD)
    night.passes(25)
    session = night.open()
    lines = iter(["2", "q", "q"])
    said: list[str] = []

    plain.run(session, lambda prompt: next(lines), said.append)

    heads = [line for line in said if line.startswith("**")]
    assert heads[:3] == [
        "** Look again now: Lamb of 02:10.",
        "** Look again now: Lamb of 02:10.",
        "** Phone the vet now (Danger sign: Limp, or can't stand an hour after birth)",
    ]
    assert any(line.startswith("Lamb of 02:10, 3.4 hours old") for line in said)
