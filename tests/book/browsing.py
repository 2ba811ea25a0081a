"""A real browser, where one is installed: found by name on the path, never downloaded."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import pytest

NAMES = ("chromium", "chromium-browser", "google-chrome")
QUIET = (
    *("--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync"),
    *("--disable-background-networking", "--disable-component-update"),
)
"""It must ask for nothing of its own, so that all that is asked for is the book's doing."""

MUST = "TRIAGE_BROWSER"
"""Set to `must`, a missing browser is a failure; else the tests that need one are skipped."""


def found() -> str:
    """The path of an installed browser; without one the test is skipped, or fails where it must not be."""
    path = next((path for name in NAMES if (path := shutil.which(name))), "")
    if not path:
        why = f"no browser is installed; looked for {', '.join(NAMES)}"
        if os.environ.get(MUST) == "must":
            pytest.fail(why)
        pytest.skip(why)
    return path


@contextmanager
def browser() -> Iterator[Any]:
    """A browser without a window."""
    path = found()
    from playwright.sync_api import sync_playwright

    with sync_playwright() as play:
        opened = play.chromium.launch(executable_path=path, args=list(QUIET))
        try:
            yield opened
        finally:
            opened.close()


def barriers(page: Any) -> tuple[list[str], set[str]]:
    """What axe-core finds on a page by every rule that it has, and the rules that something on it kept."""
    from axe_playwright_python.sync_playwright import Axe

    axe = Axe()
    page.evaluate(axe.axe_script)
    rules = page.evaluate("axe.getRules().map(rule => rule.ruleId)")
    options = {"rules": {rule: {"enabled": True} for rule in rules}, "resultTypes": ["violations"]}
    came = axe.run(page, options=options).response
    found = [f"{each['id']}: {each['nodes'][0]['html'][:200]}" for each in came["violations"]]
    return found, {each["id"] for each in came["passes"]}
