"""What each key or line does. Both faces hold one Session and only show it."""

from triage.session.session import Session

__all__ = ["Session"]
