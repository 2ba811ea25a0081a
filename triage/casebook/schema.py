"""The shape of the casebook file, and how an older one becomes a present one.

A file's `user_version` is how many of the migrations it has had. They are never edited once an edition
has gone out: a change is a new one at the end. Times are whole microseconds since 1970 in UTC.
"""

from __future__ import annotations

from triage.casebook.form import Form

MIGRATIONS = (
    """
    CREATE TABLE lambs (
        id TEXT PRIMARY KEY,
        name TEXT NOT NULL,
        added INTEGER NOT NULL,
        born INTEGER,
        born_guessed INTEGER NOT NULL DEFAULT 1,
        birth_type TEXT NOT NULL DEFAULT '',
        sex TEXT NOT NULL DEFAULT ''
    );
    CREATE TABLE cases (
        id TEXT PRIMARY KEY,
        lamb TEXT NOT NULL REFERENCES lambs (id),
        begun INTEGER NOT NULL,
        touched INTEGER NOT NULL,
        edition TEXT NOT NULL,
        look_set INTEGER,
        look_due INTEGER,
        closed INTEGER,
        version INTEGER NOT NULL DEFAULT 0
    );
    CREATE INDEX cases_of_lamb ON cases (lamb, begun);
    CREATE INDEX cases_open ON cases (look_due IS NULL, look_due, touched DESC) WHERE closed IS NULL;
    CREATE TABLE moves (
        id INTEGER PRIMARY KEY,
        case_id TEXT NOT NULL REFERENCES cases (id),
        place INTEGER NOT NULL,
        kind TEXT NOT NULL CHECK (kind IN ('answer', 'act')),
        name TEXT NOT NULL,
        value,
        said TEXT NOT NULL DEFAULT '',
        at INTEGER,
        dropped INTEGER
    );
    CREATE UNIQUE INDEX moves_of_case ON moves (case_id, place) WHERE dropped IS NULL;
    CREATE TABLE observations (
        id TEXT PRIMARY KEY,
        lamb TEXT NOT NULL REFERENCES lambs (id),
        kind TEXT NOT NULL,
        at INTEGER NOT NULL,
        written INTEGER NOT NULL,
        parts TEXT NOT NULL
    );
    CREATE INDEX observations_of_lamb ON observations (lamb, at);
    """,
)
"""Moves that were taken back or changed stay in the file, marked with when they were dropped."""

LOST = "A lamb whose card was lost"

CASEBOOK = Form(
    "casebook",
    0x4C616D62,
    MIGRATIONS,
    ("lambs", "cases", "moves", "observations"),
    {
        "lambs": ("lamb", "lambs"),
        "cases": ("walk", "walks"),
        "moves": ("answer or act", "answers and acts"),
        "observations": ("note", "notes"),
    },
    (
        # Answers without their case get one, and a case without its lamb too.
        "INSERT OR IGNORE INTO cases (id, lamb, begun, touched, edition) "
        "SELECT case_id, case_id, coalesce(min(at), 0), coalesce(max(at), 0), '' FROM moves "
        "WHERE dropped IS NULL AND case_id NOT IN (SELECT id FROM cases) GROUP BY case_id",
        "INSERT OR IGNORE INTO lambs (id, name, added) "
        f"SELECT lamb, '{LOST}', begun FROM cases WHERE lamb NOT IN (SELECT id FROM lambs)",
        "INSERT OR IGNORE INTO lambs (id, name, added) "
        f"SELECT lamb, '{LOST}', at FROM observations WHERE lamb NOT IN (SELECT id FROM lambs)",
        "DELETE FROM moves WHERE case_id NOT IN (SELECT id FROM cases)",
    ),
)
"""The lambs of a holding, and all that is kept of them."""
