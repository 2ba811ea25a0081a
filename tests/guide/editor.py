"""YAML as an editor takes it: scalars without quotes become numbers, truth values and nothing.

An editor's default is YAML 1.2 with its core schema. PyYAML knows 1.1, where `no` is a truth value and
`2026-01-01` a date; an editor set to 1.1 hands a date on as text. Keys are text in both, as in JSON.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date
from typing import Any

import yaml

_INT = re.compile(r"[-+]?[0-9]+|0o[0-7]+|0x[0-9a-fA-F]+")
_FLOAT = re.compile(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?")
_WORDS: dict[str, Any] = {
    **dict.fromkeys(("", "~", "null", "Null", "NULL"), None),
    **dict.fromkeys(("true", "True", "TRUE"), True),
    **dict.fromkeys(("false", "False", "FALSE"), False),
    **dict.fromkeys((f"{sign}.{word}" for sign in ("", "+") for word in ("inf", "Inf", "INF")), float("inf")),
    **dict.fromkeys((f"-.{word}" for word in ("inf", "Inf", "INF")), float("-inf")),
}


def core(node: yaml.ScalarNode) -> Any:
    """Return a scalar by the core schema of YAML 1.2."""
    text: str = node.value
    if node.style is not None:
        return text
    if text in _WORDS:
        return _WORDS[text]
    if _INT.fullmatch(text):
        return int(text, 0) if text[:2] in {"0o", "0x"} else int(text)
    return float(text) if _FLOAT.fullmatch(text) else text


def older(node: yaml.ScalarNode) -> Any:
    """Return a scalar by YAML 1.1, a date as it was written."""
    loader = yaml.SafeLoader("")
    tag = loader.resolve(yaml.ScalarNode, node.value, (node.style is None, True))  # type: ignore[no-untyped-call]
    made = loader.construct_object(yaml.ScalarNode(tag, node.value))
    return node.value if isinstance(made, date) else made


def as_editor(text: str, scalar: Callable[[yaml.ScalarNode], Any] = core) -> Any:
    """Return a YAML text as the JSON value that an editor holds against a schema."""
    return _value(yaml.compose(text, Loader=yaml.BaseLoader), scalar)


def _value(node: Any, scalar: Callable[[yaml.ScalarNode], Any]) -> Any:
    if isinstance(node, yaml.MappingNode):
        return {key.value: _value(value, scalar) for key, value in node.value}
    if isinstance(node, yaml.SequenceNode):
        return [_value(each, scalar) for each in node.value]
    return scalar(node)
