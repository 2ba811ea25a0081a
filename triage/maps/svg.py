"""The map of a topic as one inline SVG drawing."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from html import escape
from itertools import groupby, pairwise

from triage.guide.model import Guide
from triage.maps.boxes import ARROW, PAD, SIZE, WIDE, Line
from triage.maps.drawing import Drawing, Placed, Point, set_out
from triage.maps.topic_map import TopicMap, map_of
from triage.page.inert import inert
from triage.units import System

STYLE = (
    ":where(.map) :where(rect,path){fill:none;stroke:currentColor}"
    ":where(.map-end rect){stroke-width:2.5}:where(.map-label){font-weight:700}"
    ":where(.map-out text){text-decoration:underline}:where(.map-back){stroke-dasharray:5 4}"
)
"""How a map looks where nothing else is said: it yields to any rule of the page's own style."""

HEAD_DOWN, HEAD_UP = "m-4-7l4 7 4-7", "m-4 7l4-7 4 7"
"""The head of an arrow, drawn from its tip."""


def svg_map(
    guide: Guide,
    topic: str,
    href: Callable[[str], str],
    system: System = "metric",
    number: Callable[[str], int] | None = None,
) -> str:
    """Return a topic as an inline SVG drawing; KeyError where the guide has no such topic.

    `href` returns the address of a node's page, of this topic or of another, and `number` the number by which
    it is found on paper; without it the places of a map are counted. Without any style it is drawn in the
    colour of the text around it. A style sheet may set the colours of these classes; sizes are counted, and
    must stay:

    - `map` is the whole; its `width` and `height` are real pixels, so put it into a box that scrolls
    - `map-ask`, `map-act`, `map-end` are a box with its text: a `rect` and a `text` within a link
    - `map-out` is a link within a box that leads to the map of another topic
    - `map-edge` is all lines, `map-edge map-back` all that lead back up
    - `map-label` is the number that a line leads to, at the side of its answer
    """
    drawn = map_of(guide, topic, system)
    drawn = drawn.numbered(number) if number else drawn
    drawing = set_out(guide, drawn)
    wide, high = round(drawing.wide), round(drawing.high)
    title, told = f"map-{topic}-title", f"map-{topic}-desc"
    parts = (
        f'<svg class="map" xmlns="http://www.w3.org/2000/svg" role="group" aria-labelledby="{title}"'
        f' aria-describedby="{told}" width="{wide}" height="{high}" viewBox="0 0 {wide} {high}"'
        f' font-family="Arial,Helvetica,sans-serif" font-size="{SIZE}" fill="currentColor">',
        f"<style>{STYLE}</style>",
        f'<title id="{title}">{_safe(f"Map: {guide.topics[topic].title}")}</title>',
        f'<desc id="{told}">{_safe(in_words(drawn))}</desc>',
        *_lines(drawing),
        *(_box(placed, href) for placed in drawing.boxes),
        "</svg>",
    )
    return "\n".join(parts)


def in_words(drawn: TopicMap) -> str:
    """Return what a drawing shows, for who can't see it."""
    count = {shape: sum(spot.shape == shape for spot in drawn.spots) for shape in ("ask", "act", "end")}
    kinds = (("ask", "question"), ("act", "thing to do"), ("end", "end"))
    each = [f"{count[shape]} {_plural(word, count[shape])}" for shape, word in kinds if count[shape]]
    back = " A broken line goes back up." if any(way.back for way in drawn.ways) else ""
    return (
        f"{', '.join(each)}, each with a number, from the top down. "
        f"Beside each answer stands the number of the place that it leads to.{back}"
    )


def _plural(word: str, count: int) -> str:
    return word if count == 1 else {"thing to do": "things to do"}.get(word, f"{word}s")


def _lines(drawing: Drawing) -> Iterator[str]:
    for back, name in ((False, "map-edge"), (True, "map-edge map-back")):
        paths = [_path(route.points, back) for route in drawing.routes if route.way.back == back]
        if paths:
            yield f'<path class="{name}" d="{"".join(paths)}"/>'


def _path(points: Sequence[Point], back: bool) -> str:
    """Return a line with the head of its arrow: straight along a side or a height, and bent between."""
    whole = [(round(x), round(y)) for x, y in points]
    made = [f"M{whole[0][0]} {whole[0][1]}"]
    for (x, y), (to_x, to_y) in pairwise(whole):
        aside, down = to_x - x, to_y - y
        if not down:
            made.append(f"h{aside}")
        elif not aside:
            made.append(f"v{down}")
        else:
            bend = round(down * 0.55)
            made.append(f"c0 {bend} {aside} {down - bend} {aside} {down}")
    return "".join((*made, HEAD_UP if back else HEAD_DOWN))


def _box(placed: Placed, href: Callable[[str], str]) -> str:
    spot, box = placed.box.spot, placed.box
    round_ = ' rx="12"' if spot.shape == "act" else ""
    rect = f'<rect x="-{PAD}" width="{WIDE}" height="{box.high}"{round_}/>'
    own = _texts(line for line in box.lines if not line.goes_to)
    made = [
        f'<g class="map-{spot.shape}" transform="translate({round(placed.x) + PAD} {round(placed.y)})">',
        f'<a href="{escape(href(spot.name))}">{rect}{own}</a>',
    ]
    for to, lines in groupby((line for line in box.lines if line.goes_to), key=lambda line: line.goes_to):
        made.append(f'<a class="map-out" href="{escape(href(to))}">{_texts(lines)}</a>')
    return "".join((*made, "</g>"))


def _texts(lines: Iterable[Line]) -> str:
    return " ".join(_text(line) for line in lines)


def _text(line: Line) -> str:
    bold = ' font-weight="700"' if line.bold else ""
    number = (
        f' <tspan class="map-label" x="{WIDE - PAD - ARROW}">\u2192 {line.number}</tspan>'
        if line.number
        else ""
    )
    return f'<text y="{line.down}"{bold}>{_safe(line.text)}{number}</text>'


def _safe(text: str) -> str:
    return escape(inert(text))
