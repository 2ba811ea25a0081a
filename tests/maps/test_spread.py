"""Spreading: nothing of a layer overlaps, the order stays, and what is joined with one thing stands under it."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.maps.spread import spread

GAP = 10.0


@st.composite
def joined_layers(
    draw: st.DrawFn,
) -> tuple[list[list[str]], dict[str, float], dict[str, list[tuple[str, float]]]]:
    """Return layers of things with their widths, and what is joined with what."""
    layers = [[f"{at}.{n}" for n in range(draw(st.integers(1, 5)))] for at in range(draw(st.integers(1, 5)))]
    wide = {name: draw(st.floats(5, 300)) for layer in layers for name in layer}
    joined: dict[str, list[tuple[str, float]]] = {}
    for upper, lower in pairwise(layers):
        for name in upper:
            other = draw(st.sampled_from(lower))
            pull = draw(st.sampled_from((1.0, 2.0, 8.0)))
            joined.setdefault(name, []).append((other, pull))
            joined.setdefault(other, []).append((name, pull))
    return layers, wide, joined


@given(joined_layers())
def test_nothing_overlaps(
    drawn: tuple[list[list[str]], dict[str, float], dict[str, list[tuple[str, float]]]],
) -> None:
    """Any two neighbours of a layer are in order and apart, and nothing stands left of nought."""
    layers, wide, joined = drawn
    at = spread(layers, wide, joined, GAP)

    for layer in layers:
        for left, right in pairwise(layer):
            assert at[right] - at[left] >= (wide[left] + wide[right]) / 2 + GAP - 1e-6
        assert at[layer[0]] - wide[layer[0]] / 2 >= -1e-6


def test_a_chain_stands_straight() -> None:
    """What is joined with one thing above and one below stands right between them."""
    layers = [["a"], ["b"], ["c"]]
    joined = {"a": [("b", 1.0)], "b": [("a", 1.0), ("c", 1.0)], "c": [("b", 1.0)]}

    at = spread(layers, {"a": 200, "b": 10, "c": 50}, joined, GAP)

    assert at == pytest.approx({"a": 100, "b": 100, "c": 100})


def test_a_parent_stands_over_the_middle_of_its_children() -> None:
    """Two things under one are as far to its left as to its right."""
    layers = [["top"], ["left", "right"]]
    joined = {"top": [("left", 1.0), ("right", 1.0)], "left": [("top", 1.0)], "right": [("top", 1.0)]}

    at = spread(layers, {"top": 100, "left": 100, "right": 100}, joined, GAP)

    assert at["right"] - at["left"] == pytest.approx(110)
    assert at["top"] == pytest.approx((at["left"] + at["right"]) / 2)
