"""How large a text is set, and how much room it takes, so that what fits a sheet is counted beforehand.

Browsers differ in what they can repeat or count on each printed page, so nothing is left to them: a sheet
is laid out here, with its own foot. The widths are those of the plain sans-serif type that the pages ask for
first, in thousandths of its size, and a little more to be safe.
"""

from __future__ import annotations

from dataclasses import dataclass

MM_PER_POINT = 25.4 / 72
SPARE = 1.03
"""A browser's own type may run a little wider."""
SPARE_BOLD = 1.09
USUAL = 600
"""The width of any sign that is not listed."""

_WIDTHS: dict[int, str] = {
    191: "'",
    222: "ijl",
    260: "|",
    278: " !,./:;I[]\\ft",
    333: "()-`r",
    355: '"',
    389: "*",
    400: "°",
    500: "Jckvsxyz",
    556: "#$0123456789?L_abdeghnopqu",
    584: "+<=>~",
    611: "FTZ",
    667: "&ABEKPSVXY",
    722: "CDHNRUw",
    778: "GOQ",
    833: "Mm",
    889: "%",
    944: "W",
    1015: "@",
}
WIDTH = {sign: width for width, signs in _WIDTHS.items() for sign in signs}


@dataclass(frozen=True)
class Style:
    """How a text is set; sizes in points, distances in mm. The style sheet is made from the same values."""

    name: str
    pt: float
    leading: float = 1.28
    bold: bool = False
    before: float = 0.0
    after: float = 0.0

    @property
    def line(self) -> float:
        """The height of one line in mm."""
        return self.pt * self.leading * MM_PER_POINT

    def css(self) -> str:
        """Return the rule of this style."""
        weight = "700" if self.bold else "400"
        return (
            f".{self.name} {{ font-size: {self.pt:g}pt; line-height: {self.leading:g}; "
            f"font-weight: {weight}; margin: {self.before:g}mm 0 {self.after:g}mm; }}"
        )


TITLE = Style("title", 34, 1.1, bold=True, after=2)
BIG = Style("big", 36, 1.08, bold=True)
MIDDLE = Style("middle", 32, 1.08, bold=True)
SIGN = Style("sign", 27, 1.12, bold=True)
AID = Style("aid", 16, 1.25)
HUGE = Style("huge", 44, 1.1, bold=True)
BAND = Style("band", 20, 1.15, bold=True, before=2, after=1)
HEAD = Style("head", 14, 1.2, bold=True, before=3, after=1)
LEAD = Style("lead", 14, 1.3, after=2)
BODY = Style("body", 12, 1.3, after=1)
STRONG = Style("strong", 12, 1.3, bold=True, after=0.5)
CELL = Style("cell", 12, 1.24)
DOING = Style("doing", 12, 1.24, after=1.2)
LABEL = Style("label", 10.5, 1.2, bold=True)
NOTE = Style("note", 10.5, 1.25, after=0.5)
SMALL = Style("small", 8.5, 1.25, after=0.4)
FOOT = Style("foot", 8, 1.25)

STYLES = (
    *(TITLE, BIG, MIDDLE, SIGN, AID, HUGE, BAND, HEAD, LEAD),
    *(BODY, STRONG, CELL, DOING, LABEL, NOTE, SMALL, FOOT),
)


def wide(text: str, style: Style) -> float:
    """Return the width of a text on one line, in mm."""
    spare = SPARE_BOLD if style.bold else SPARE
    return sum(WIDTH.get(sign, USUAL) for sign in text) / 1000 * style.pt * MM_PER_POINT * spare


def lines_in(text: str, style: Style, width: float) -> int:
    """Count the lines that a text takes in a column so many mm wide."""
    count, used, space = 1, 0.0, wide(" ", style)
    for word in text.split():
        long = wide(word, style)
        if used and used + space + long > width:
            count, used = count + 1, 0.0
        used += long + (space if used else 0.0)
        if used > width:  # a word that is wider than the column is broken
            count, used = count + int(used / width), used % width
    return count


def high(text: str, style: Style, width: float) -> float:
    """Return the height of a paragraph in mm, the room around it with it."""
    return lines_in(text, style, width) * style.line + style.before + style.after
