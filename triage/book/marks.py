"""Pieces of HTML that every part of the book is made of. Texts go in as HTML that `Words` has made safe."""

from __future__ import annotations

from collections.abc import Iterable


def tag(name: str, inner: str, kind: str = "") -> str:
    """Return an element; `kind` is its class."""
    marked = f' class="{kind}"' if kind else ""
    return f"<{name}{marked}>{inner}</{name}>"


def para(inner: str, kind: str = "") -> str:
    """Return a paragraph, or nothing where there is no text."""
    return tag("p", inner, kind) if inner else ""


def listed(items: Iterable[str], kind: str = "", name: str = "ul") -> str:
    """Return a list, or nothing where it has no items."""
    inner = "".join(f"<li>{each}</li>" for each in items)
    return tag(name, inner, kind) if inner else ""


def labelled(label: str, inner: str, kind: str = "") -> str:
    """Return a paragraph that begins with a word for what it is, or nothing where there is no text."""
    return para(f"<b>{label}</b> {inner}", kind) if inner else ""


def lean(html: str) -> str:
    """Return HTML without the ends that it need not have: a cell or a paragraph ends with what follows."""
    for name in ("li", "p", "td", "th", "tr", "dt", "dd"):
        html = html.replace(f"</{name}>", "")
    return html


def section(anchor: str, number: int, title: str, inner: str, kind: str = "") -> str:
    """Return a numbered section under the third heading."""
    marked = f' class="{kind}"' if kind else ""
    return (
        f'<section id="{anchor}"{marked}>'
        f'<h3><span class="no">{number}</span> <span>{title}</span></h3>{inner}</section>\n'
    )


def part(anchor: str, number: int, title: str, inner: str) -> str:
    """Return a numbered part of the book under the second heading."""
    return (
        f'<section id="{anchor}" class="part">'
        f'<h2><span class="no">{number}</span> <span>{title}</span></h2>{inner}</section>\n'
    )


def row(cells: Iterable[str], head: bool = False) -> str:
    """Return a row of a table; its first cell heads it."""
    made = [
        f'<th scope="{"col" if head else "row"}">{each}</th>' if head or not at else f"<td>{each}</td>"
        for at, each in enumerate(cells)
    ]
    return f"<tr>{''.join(made)}</tr>"


def table(caption: str, heads: Iterable[str], rows: Iterable[Iterable[str]]) -> str:
    """Return a table with its caption."""
    body = "".join(row(each) for each in rows)
    return (
        f'<div class="wide" tabindex="0" role="region" aria-label="{caption}">'
        f"<table><caption>{caption}</caption>"
        f"<thead>{row(heads, head=True)}</thead><tbody>{body}</tbody></table></div>"
    )
