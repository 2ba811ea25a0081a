"""Dead advice: a branch that no real answer takes, an end that no lamb comes to."""

from __future__ import annotations

from collections.abc import Iterator

from triage.check.search.searched import Searched
from triage.guide.model import Ask
from triage.problems import Problem


def branches(searched: Searched) -> Iterator[Problem]:
    """Each branch is taken by some answer on some walk."""
    taken = searched.taken
    came = set(searched.states.at)
    for at, node in enumerate(searched.nodes):
        if isinstance(node, Ask) and at in came:
            for index, branch in enumerate(node.branches):
                if (at, index) not in taken:
                    what = f"no lamb that comes to '{node.name}' can take this branch; delete it"
                    yield Problem(branch.place, what, "dead-branch")


def nodes(searched: Searched) -> Iterator[Problem]:
    """Each node that branches lead to is met by some lamb."""
    came = set(searched.states.at)
    for at, node in enumerate(searched.nodes):
        if at not in came:
            what = f"branches lead to '{node.name}', but no real answers do; lead some here, or delete it"
            yield Problem(node.place, what, "no-lamb-comes")
