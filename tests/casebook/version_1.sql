PRAGMA application_id = 1281453410;
PRAGMA user_version = 1;
BEGIN TRANSACTION;
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
INSERT INTO "cases" VALUES('case-1','lamb-1',1770775800000000,1770775800000000,'2026.1',1770775800000000,1770777000000000,NULL,1);
CREATE TABLE lambs (
        id TEXT PRIMARY KEY,
        name TEXT NOT NULL,
        added INTEGER NOT NULL,
        born INTEGER,
        born_guessed INTEGER NOT NULL DEFAULT 1,
        birth_type TEXT NOT NULL DEFAULT '',
        sex TEXT NOT NULL DEFAULT ''
    );
INSERT INTO "lambs" VALUES('lamb-1','Blue 7',1770775800000000,1770765000000000,1,'twin','ewe');
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
INSERT INTO "moves" VALUES(1,'case-1',0,'answer','danger','none','',1770775800000000,NULL);
INSERT INTO "moves" VALUES(2,'case-1',1,'answer','temperature',36.2,'36.2',1770775800000000,NULL);
CREATE TABLE observations (
        id TEXT PRIMARY KEY,
        lamb TEXT NOT NULL REFERENCES lambs (id),
        kind TEXT NOT NULL,
        at INTEGER NOT NULL,
        written INTEGER NOT NULL,
        parts TEXT NOT NULL
    );
INSERT INTO "observations" VALUES('note-1','lamb-1','weight',1770775800000000,1770775800000000,'{"weight": 4.2}');
CREATE INDEX cases_of_lamb ON cases (lamb, begun);
CREATE INDEX cases_open ON cases (look_due IS NULL, look_due, touched DESC) WHERE closed IS NULL;
CREATE UNIQUE INDEX moves_of_case ON moves (case_id, place) WHERE dropped IS NULL;
CREATE INDEX observations_of_lamb ON observations (lamb, at);
COMMIT;
