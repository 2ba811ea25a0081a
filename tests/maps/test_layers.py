"""Layers: every way leads down but those that close a loop, whatever a topic looks like."""

from __future__ import annotations

import networkx as nx
from hypothesis import given

from tests.maps.conftest import Pairs, topics
from tests.test_import_hygiene import FIRST_QUESTION, loaded
from triage.maps.layers import lay, layers_of, leading_back


@given(topics())
def test_without_the_ways_back_no_loop_is_left(topic: tuple[tuple[str, ...], Pairs]) -> None:
    """networkx finds no cycle in what is kept; and where it found none at first, no way leads back."""
    names, pairs = topic
    back = leading_back(names, pairs)
    whole, kept = (_graph(names, set(pairs) - set(gone)) for gone in ((), back))

    assert nx.is_directed_acyclic_graph(kept)
    assert bool(back) != nx.is_directed_acyclic_graph(whole)


def _graph(names: tuple[str, ...], pairs: set[tuple[str, str]]) -> nx.DiGraph[str]:
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_nodes_from(names)
    graph.add_edges_from(pairs)
    return graph


@given(topics())
def test_every_other_way_leads_down(topic: tuple[tuple[str, ...], Pairs]) -> None:
    """A way stands above what it leads to, one that leads back below it, and no layer is empty."""
    names, pairs = topic
    laid = lay(names, pairs)

    for start, to in pairs:
        if start != to:
            down = laid.layer[start] < laid.layer[to]
            assert down != ((start, to) in laid.back)
    assert set(laid.layer.values()) == set(range(max(laid.layer.values()) + 1))


@given(topics())
def test_a_long_way_is_told_where_it_passes_each_layer(topic: tuple[tuple[str, ...], Pairs]) -> None:
    """As many points as there are layers between, and no two things of a layer in one place."""
    names, pairs = topic
    laid = lay(names, pairs)
    taken = [(laid.layer[name], laid.across[name]) for name in names]
    for (start, to), points in laid.through.items():
        low, high = sorted((laid.layer[start], laid.layer[to]))
        assert len(points) == high - low - 1
        if (to, start) not in laid.through or start < to:
            taken += zip(range(low + 1, high), points, strict=True)

    assert len(set(taken)) == len(taken)


def test_what_nothing_leads_to_stands_just_above_what_it_leads_to() -> None:
    """A second way in, to the end of a long chain, does not make a line over the whole map."""
    pairs = (("a", "b"), ("b", "c"), ("c", "d"), ("in", "d"))

    assert layers_of(("in", "a", "b", "c", "d"), pairs) == {"a": 0, "b": 1, "c": 2, "d": 3, "in": 2}


def test_the_way_back_is_the_one_met_last() -> None:
    """Warm it, check, and back to warming: the check leads back, and not the warming."""
    pairs = (("in", "warm"), ("warm", "check"), ("check", "warm"), ("check", "well"))

    assert leading_back(("check", "warm", "well", "in"), pairs) == {("check", "warm")}


def test_the_layout_library_is_loaded_for_a_map_alone() -> None:
    """Neither a first question nor a page of reading takes it."""
    modules = loaded(f"{FIRST_QUESTION}\nimport triage.session.reading, triage.maps.svg, triage.maps.told")

    assert "triage.maps.svg" in modules
    assert not {"igraph", "networkx"} & {module.partition(".")[0] for module in modules}
