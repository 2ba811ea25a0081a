"""Maps of invented topics: any shape that a topic can have, loops and parts that nothing joins among them."""

from __future__ import annotations

from hypothesis import strategies as st

Pairs = tuple[tuple[str, str], ...]


@st.composite
def topics(draw: st.DrawFn) -> tuple[tuple[str, ...], Pairs]:
    """Return names of places and ways between them, as a topic may have them."""
    names = tuple(f"place-{at}" for at in range(draw(st.integers(1, 12))))
    pair = st.tuples(st.sampled_from(names), st.sampled_from(names))
    return names, tuple(draw(st.lists(pair, max_size=24)))
