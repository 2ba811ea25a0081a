"""Contrast of two colours, by the formula of the W3C.

W3C, Web Content Accessibility Guidelines 2.2 (2023), https://www.w3.org/TR/WCAG22/: the definitions of
relative luminance and of contrast ratio. Success criterion 1.4.6 (level AAA) asks for at least 7:1.
"""

from __future__ import annotations

Rgb = tuple[int, int, int]

AAA = 7.0


def luminance(rgb: Rgb) -> float:
    """Return the relative luminance of a colour in sRGB, each part from 0 to 255."""
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
        for part in (each / 255 for each in rgb)
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: Rgb, other: Rgb) -> float:
    """Return the contrast ratio of two colours, from 1 to 21."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)
