-- The mentors' queue, the answers to it, and the case notes drafted from it.

CREATE TABLE calls (
	association TEXT NOT NULL,
	id          TEXT NOT NULL,
	question    TEXT NOT NULL,
	kind        TEXT NOT NULL,
	by          TEXT NOT NULL,
	about       TEXT NOT NULL,
	words       TEXT NOT NULL,
	at          INTEGER NOT NULL,
	claimer     TEXT NOT NULL DEFAULT '',
	lapses      INTEGER NOT NULL DEFAULT 0,
	nudged      INTEGER NOT NULL DEFAULT 0,
	closed      INTEGER NOT NULL DEFAULT 0,
	PRIMARY KEY (association, id),
	FOREIGN KEY (association, question) REFERENCES questions (association, id) ON DELETE CASCADE
) STRICT;
CREATE INDEX calls_question ON calls (association, question);
CREATE INDEX calls_closed ON calls (association, closed, at);

CREATE TABLE replies (
	association TEXT NOT NULL,
	id          TEXT NOT NULL,
	call        TEXT NOT NULL,
	by          TEXT NOT NULL,
	text        TEXT NOT NULL,
	at          INTEGER NOT NULL,
	delivered   INTEGER NOT NULL DEFAULT 0,
	PRIMARY KEY (association, id),
	FOREIGN KEY (association, call) REFERENCES calls (association, id) ON DELETE CASCADE
) STRICT;
CREATE INDEX replies_call ON replies (association, call);
CREATE INDEX replies_undelivered ON replies (association, at) WHERE delivered = 0;

-- A draft outlives its question: it is its mentor's work.
CREATE TABLE drafts (
	association TEXT NOT NULL,
	id          TEXT NOT NULL,
	question    TEXT NOT NULL,
	by          TEXT NOT NULL,
	text        TEXT NOT NULL,
	at          INTEGER NOT NULL,
	state       TEXT NOT NULL,
	note        TEXT NOT NULL,
	PRIMARY KEY (association, id)
) STRICT;
