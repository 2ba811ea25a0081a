"""A page as PDF, by a library that is an extra. It sets the same HTML: no second layout can differ."""

from __future__ import annotations

from typing import Any

LACKING = (
    "For PDF install the extra: pip install 'bummer-triage[pdf]'. "
    "Or write HTML, open it in a browser, and print it to a PDF file there."
)
NO_TYPE = (
    "The PDF library is here, but the Pango library that it sets type with is not: install the package pango "
    "(Debian: libpango-1.0-0 and libpangoft2-1.0-0). "
    "Or write HTML, open it in a browser, and print it to a PDF file there."
)

FULL = ".sheet { display: flex; flex-direction: column; }"
"""This library leaves a block at the height of what is in it, unless it is laid out so."""


class NoPdf(Exception):
    """Why no PDF can be made, in a sentence or two."""


def pdf_of(html: str) -> bytes:
    """Return a page as PDF; NoPdf where the library, or what it needs of the system, is missing."""
    try:
        import weasyprint
    except ImportError as error:
        raise NoPdf(LACKING) from error
    except OSError as error:
        raise NoPdf(NO_TYPE) from error
    page = weasyprint.HTML(string=html, url_fetcher=_nothing)
    written = page.write_pdf(stylesheets=[weasyprint.CSS(string=FULL)])
    assert isinstance(written, bytes)
    return written


def _nothing(url: str, *_: Any, **__: Any) -> Any:
    """Fetch nothing, whatever a page might ask for."""
    raise ValueError(f"nothing is loaded: {url}")
