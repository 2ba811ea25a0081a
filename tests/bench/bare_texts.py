"""The fixed texts of the bare apps, apart from them so that reading these loads no Textual."""

from __future__ import annotations

FIRST = "This is the first text of a bare app."
SECOND = "This is the other text of a bare app."

PAGES = (
    (
        " Somewhere between two and three \n An even place | 4 hours old, 3.5 kg, 39.2 °C",
        """Which of these lines is the one?

Take the first one that fits, and read each one to its end before the next.

 1  One line of a list, about as long as most
 2  A shorter line
 3  Another line of the list, a little longer than the first
 4  A line of middling length
 5  A fifth line, so that the list is a list
 6  None of these lines
 n  Not sure""",
        "b back   ? how and why   v phone   q leave",
    ),
    (
        " Somewhere between two and three \n An even place | 4 hours old, 3.5 kg, 39.2 °C",
        """Now do these things in turn.

 1  The first thing to do is written here, in a line that is long enough to be
    wrapped once, as such lines are.
 2  The second thing is short.
 3  The third thing to do has some words about how to do it well and slowly.
 4  The fourth thing is short too.

Take care
 !  A warning stands here, and it is long enough to be wrapped to the line that
    comes after it.
 !  A second warning, on one line.

Then wait 30 minutes and go on.""",
        "Enter done   b back   ? how   v phone   q leave",
    ),
)
"""Two fixed pages, each a head, a body and a line of keys."""

MOVED_KEYS = "Enter done   b back   ? how and why   v phone   w working and sources\nq leave"
"""A key line of two rows: put under the second page, it makes every swap move the widgets."""

MARKS = ("Which of these lines", "Now do these things")
"""A text by which each of the two pages is known."""
