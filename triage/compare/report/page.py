"""The report as one HTML page that loads nothing: for a screen, light or dark, and for paper."""

from __future__ import annotations

from collections.abc import Iterator

from triage.compare.report.compared import Compared, Edition
from triage.compare.report.sections import Entry, Marks, Section, sections
from triage.compare.report.text import PARTLY, SAME, SHOWS_IT
from triage.paper.html import document, safe

TITLE = "What changed in the guide"

LIGHT = {"page": "#fbfaf6", "ink": "#1d1c19", "quiet": "#45423a", "link": "#17493b", "soft": "#dbd6c8"}
LIGHT |= {"in": "#dcecdf", "out": "#f6ddd6"}
DARK = {"page": "#171613", "ink": "#efebe1", "quiet": "#cbc6b9", "link": "#b5d9c8", "soft": "#3d3a33"}
DARK |= {"in": "#1d3a2a", "out": "#4a241b"}
PAPER = {"page": "#ffffff", "ink": "#000000", "quiet": "#000000", "link": "#000000", "soft": "#777777"}
PAPER |= {"in": "#ffffff", "out": "#ffffff"}
"""Every text stands at least 7:1 against all that it is set on."""

TEXTS = (("ink", "page"), ("quiet", "page"), ("link", "page"), ("ink", "in"), ("ink", "out"))
"""Which colour of a text stands on which ground."""

_STYLE = """
*{box-sizing:border-box}
html{font:100%/1.5 system-ui,-apple-system,"Segoe UI",Roboto,"Noto Sans",Arial,sans-serif;
color:var(--ink);background:var(--page)}
body{margin:0 auto;max-width:46rem;padding:1rem;overflow-wrap:anywhere}
h1{font-size:1.5rem;line-height:1.25;margin:1rem 0}
h2{font-size:1.25rem;line-height:1.3;margin:3rem 0 .5rem;border-top:1px solid var(--soft);padding-top:1.5rem}
h3{font-size:1rem;margin:0 0 .25rem}
p{margin:.4rem 0}
a{color:var(--link)}
a:focus-visible,summary:focus-visible{outline:3px solid var(--link);outline-offset:3px}
.to{list-style:none;padding:0}
.to a{display:inline-block;padding:.4rem 0;min-height:2.75rem}
.first h2{font-size:1.5rem;border-top:4px solid var(--ink)}
.first article{border-left:4px solid var(--ink);padding-left:.75rem}
article{margin:1.5rem 0}
dl{margin:.4rem 0;display:grid;grid-template-columns:minmax(5rem,max-content) 1fr;gap:.15rem .75rem}
dt{color:var(--quiet)}dd{margin:0}
summary{padding:.5rem 0;cursor:pointer}
.why,.quiet{color:var(--quiet)}
.partly,.warning{font-weight:700;border:3px solid var(--ink);padding:.5rem .75rem}
ins{background:var(--in);text-decoration:underline}
del{background:var(--out);text-decoration:line-through}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
@media (max-width:30rem){dl{grid-template-columns:1fr}dd{margin-bottom:.3rem}}
"""
_PAPER = """
@page{margin:14mm}
html{font:10pt/1.35 Arial,sans-serif}
body{max-width:none;padding:0}
nav{display:none}
article{break-inside:avoid;margin:3mm 0}
h2,h3{break-after:avoid}
"""


def style() -> str:
    """Return the style sheet."""
    return (
        f":root{{{_named(LIGHT)}color-scheme:light dark}}"
        f"@media (prefers-color-scheme:dark){{:root{{{_named(DARK)}}}}}{_STYLE}"
        f"@media print{{:root{{{_named(PAPER)}color-scheme:light}}{_PAPER}}}"
    )


def _named(colours: dict[str, str]) -> str:
    return "".join(f"--{name}:{value};" for name, value in colours.items())


def as_page(compared: Compared) -> str:
    """Return the whole page."""
    return document(TITLE, style(), "".join(_body(compared)))


def _body(compared: Compared) -> Iterator[str]:
    yield f"<main><h1>{safe(TITLE)}</h1>\n"
    yield from _edition("Old guide", compared.old)
    yield from _edition("New guide", compared.new)
    came = compared.comparison
    if came.same:
        yield f"<p>{safe(SAME)}</p></main>"
        return
    if not came.complete:
        yield f'<p class="partly">{safe(PARTLY)}</p>\n'
    told = sections(compared)
    yield _contents(told)
    for at, section in enumerate(told):
        yield from _section(section, loud=at < 2)
    yield "</main>"


def _edition(label: str, edition: Edition) -> Iterator[str]:
    yield f"<p><b>{label}.</b> {safe(edition.words)} {safe(edition.standing)}</p>\n"
    if edition.warning:
        yield f'<p class="warning">{safe(edition.warning)}</p>\n'


def _contents(told: tuple[Section, ...]) -> str:
    lines = (
        f'<li><a href="#{each.name}">{safe(each.title)}</a>: {each.count:,}</li>'
        if each.entries
        else f"<li>{safe(each.none)}</li>"
        for each in told
    )
    return f'<nav aria-label="What is told here"><ol class="to">{"".join(lines)}</ol></nav>\n'


def _section(section: Section, loud: bool) -> Iterator[str]:
    if not section.entries:
        return
    kind = ' class="first"' if loud else ""
    yield f'<section id="{section.name}"{kind} aria-labelledby="{section.name}-title">'
    yield f'<h2 id="{section.name}-title">{safe(section.title)}</h2>'
    if section.lead:
        yield f"<p>{safe(section.lead)}</p>"
    for entry in section.entries:
        yield from _entry(entry)
    yield "</section>\n"


def _entry(entry: Entry) -> Iterator[str]:
    yield f"<article><h3>{safe(entry.head)}</h3>"
    if entry.lines:
        yield _pairs(entry.lines)
    if entry.marks:
        yield f"<p>{_marked(entry.marks)}</p>"
    if entry.lamb:
        yield f'<p class="quiet">{safe(SHOWS_IT)}</p>{_pairs(entry.lamb)}'
    if entry.why:
        yield f'<p class="why">Why: {safe(entry.why)}</p>'
    yield "</article>\n"


def _pairs(lines: tuple[tuple[str, str], ...]) -> str:
    inner = "".join(f"<dt>{safe(label)}</dt><dd>{safe(text)}</dd>" for label, text in lines)
    return f"<dl>{inner}</dl>"


def _marked(marks: Marks) -> str:
    """Return a text with its marks as elements; a screen reader is told where each begins and ends."""
    return " ".join(map(_stretch, marks))


def _stretch(mark: tuple[str, str]) -> str:
    kind, words = mark
    if kind == "same":
        return safe(words)
    name, begins, ends = ("ins", "in: ", " end of in.") if kind == "in" else ("del", "out: ", " end of out.")
    unseen = '<span class="unseen">{}</span>'
    return f"<{name}>{unseen.format(begins)}{safe(words)}{unseen.format(ends)}</{name}>"
