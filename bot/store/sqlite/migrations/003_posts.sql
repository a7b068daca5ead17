-- What goes out: posts with their state, bulletins as they were made. And the audit trail.

CREATE TABLE posts (
	association TEXT NOT NULL,
	key         TEXT NOT NULL,
	question    TEXT, -- NULL for none
	platform    TEXT NOT NULL,
	workspace   TEXT NOT NULL,
	channel     TEXT NOT NULL,
	thread      TEXT NOT NULL,
	recipient   TEXT NOT NULL,
	body        BLOB,
	queued      INTEGER NOT NULL,
	state       TEXT NOT NULL,
	changed     INTEGER NOT NULL,
	by          TEXT NOT NULL DEFAULT '',
	message     TEXT NOT NULL DEFAULT '',
	why         TEXT NOT NULL DEFAULT '',
	PRIMARY KEY (association, key),
	FOREIGN KEY (association, question) REFERENCES questions (association, id) ON DELETE CASCADE
) STRICT;
CREATE INDEX posts_question ON posts (association, question);
CREATE INDEX posts_state ON posts (association, state, queued);

CREATE TABLE bulletins (
	association TEXT NOT NULL,
	id          TEXT NOT NULL,
	title       TEXT NOT NULL,
	text        TEXT NOT NULL,
	span_from   INTEGER NOT NULL,
	span_to     INTEGER NOT NULL,
	by          TEXT NOT NULL,
	at          INTEGER NOT NULL,
	PRIMARY KEY (association, id)
) STRICT;

CREATE TABLE audit (
	seq         INTEGER PRIMARY KEY,
	association TEXT NOT NULL,
	at          INTEGER NOT NULL,
	who         TEXT NOT NULL,
	did         TEXT NOT NULL,
	object      TEXT NOT NULL,
	about       TEXT NOT NULL,
	details     TEXT NOT NULL
) STRICT;
CREATE INDEX audit_at ON audit (association, at);
