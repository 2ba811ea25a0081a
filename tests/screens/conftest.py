"""The app under test, and its screen as text."""

from __future__ import annotations

from datetime import UTC, datetime

from textual.pilot import Pilot

from triage.clock import Now
from triage.guide.model import Guide
from triage.screens.app import LambApp
from triage.session import Session
from triage.walk import Walk

NOW = Now(datetime(2026, 2, 11, 2, 10, tzinfo=UTC), UTC)


def app_of(guide: Guide, ascii_only: bool = False) -> LambApp:
    """Return the app at the first question, at a fixed time."""
    return LambApp(Session(Walk(guide), vet="01632 960111", clock=lambda: NOW), ascii_only)


def screen_of(pilot: Pilot[None]) -> str:
    """Return what is on the screen, as text. The one place that reads Textual's compositor."""
    strips = pilot.app.screen._compositor.render_strips()
    return "\n".join("".join(segment.text for segment in strip).rstrip() for strip in strips) + "\n"
