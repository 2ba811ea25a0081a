"""A guide for a lamb in trouble: what to do next, how much, what not to do, when to phone a vet."""

from __future__ import annotations


def __getattr__(name: str) -> str:
    if name == "__version__":
        from importlib.metadata import PackageNotFoundError, version

        try:
            return version("bummer-triage")
        except PackageNotFoundError:
            return "not installed"
    raise AttributeError(name)
