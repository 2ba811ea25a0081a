"""What is loaded on the way to the first question, seen from a fresh interpreter."""

from __future__ import annotations

import subprocess
import sys

import pytest

FIRST_QUESTION = """
import sys
from triage.commands.shared import open_guide
from triage.session import Session
from triage.walk import Walk
page = Session(Walk(open_guide(None))).page()
assert page.choices
"""

FULL_SCREEN = (
    FIRST_QUESTION
    + """
import asyncio
from triage.screens.app import LambApp
async def show():
    app = LambApp(Session(Walk(open_guide(None))))
    async with app.run_test():
        pass
asyncio.run(show())
"""
)


def loaded(code: str) -> set[str]:
    """Return the modules that a fresh interpreter has after running this code."""
    ran = subprocess.run(
        [sys.executable, "-c", code + "\nprint('\\n'.join(sys.modules))"],
        capture_output=True,
        text=True,
        timeout=60,
        check=True,
    )
    return set(ran.stdout.split())


def test_networkx_is_not_loaded_on_the_way_to_a_question() -> None:
    """The graph library serves the checks alone: neither face loads it to ask a question."""
    assert "networkx" not in loaded(FULL_SCREEN)


def test_plain_mode_loads_no_screen() -> None:
    """Plain mode reaches its first question without Textual or Rich."""
    modules = loaded(FIRST_QUESTION)

    assert not {"textual", "rich"} & {module.partition(".")[0] for module in modules}


def test_a_question_opens_no_cupboard() -> None:
    """Nothing of the cupboard is loaded on the way to the first question."""
    modules = loaded(FIRST_QUESTION)

    assert not {"triage.cupboard", "triage.guide.item_links", "triage.multiplied"} & modules


@pytest.mark.parametrize(
    "module",
    ["triage.units", "triage.amounts", "triage.guide.read", "triage.walk", "triage.session", "triage.page.page", "triage.check.coverage", "triage.record", "triage.answers"],
)  # fmt: skip
def test_the_floors_below_the_screen_cannot_see_it(module: str) -> None:
    """No floor below the screens imports Textual."""
    modules = loaded(f"import sys, {module}")

    assert not {"textual", "rich"} & {each.partition(".")[0] for each in modules}
