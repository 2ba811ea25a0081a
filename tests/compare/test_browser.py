"""The page of what changed in a real browser: checked by axe-core at both sizes, and asking the network for nothing."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.book.browsing import barriers, browser
from tests.compare.made import two_folders
from triage.cli import main

CHANGES = (
    ("numbers.yaml", "value: 37", "value: 36.5"),
    ("guide.yaml", 'edition: "test"', 'edition: "next"'),
    ("sources.yaml", "grade: A", "grade: B"),
)


@pytest.mark.parametrize(("width", "scheme"), [(320, "dark"), (1280, "light")])
def test_axe_finds_nothing(width: int, scheme: str, tmp_path: Path) -> None:
    """Every rule that axe-core has; at 320 pixels nothing runs out of the screen, and nothing is asked for."""
    file = tmp_path / "changes.html"
    old, new = map(str, two_folders(tmp_path, *CHANGES))
    main(["compare", old, new, "--report", "page", "--out", str(file)])
    asked: list[str] = []
    with browser() as opened:
        page = opened.new_page(viewport={"width": width, "height": 800}, color_scheme=scheme)
        page.on("request", lambda request: asked.append(request.url))
        page.goto(file.as_uri())
        found, kept = barriers(page)
        across = page.evaluate("document.documentElement.scrollWidth")

    assert found == []
    assert {"color-contrast-enhanced", "heading-order", "region"} <= kept
    assert across <= width
    assert asked == [file.as_uri()]
