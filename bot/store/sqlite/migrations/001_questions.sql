-- Questions, the facts given to them, views, threads, buttons, and deliveries seen.
-- Times are microseconds since 1970 in UTC, 0 for none. People are platform/id, empty for nobody.

CREATE TABLE associations (
	id TEXT PRIMARY KEY
) STRICT, WITHOUT ROWID;

CREATE TABLE questions (
	association TEXT NOT NULL,
	id          TEXT NOT NULL,
	asker       TEXT NOT NULL,
	platform    TEXT NOT NULL,
	workspace   TEXT NOT NULL,
	channel     TEXT NOT NULL,
	thread      TEXT NOT NULL,
	text        TEXT NOT NULL,
	code        TEXT NOT NULL,
	season      TEXT NOT NULL,
	private     INTEGER NOT NULL,
	asked       INTEGER NOT NULL,
	message     TEXT NOT NULL DEFAULT '',
	play        TEXT NOT NULL DEFAULT '',
	outcome     TEXT NOT NULL DEFAULT '',
	ruling      BLOB,
	answered    INTEGER NOT NULL DEFAULT 0,
	PRIMARY KEY (association, id)
) STRICT;
CREATE INDEX questions_asked ON questions (association, asked, id, asker);
CREATE INDEX questions_asker ON questions (association, asker);

CREATE TABLE tags (
	association TEXT NOT NULL,
	question    TEXT NOT NULL,
	kind        TEXT NOT NULL,
	value       TEXT NOT NULL,
	PRIMARY KEY (association, question, kind, value),
	FOREIGN KEY (association, question) REFERENCES questions (association, id) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE given (
	seq         INTEGER PRIMARY KEY,
	association TEXT NOT NULL,
	question    TEXT NOT NULL,
	view        TEXT NOT NULL,
	fact        TEXT NOT NULL,
	event       TEXT NOT NULL,
	value       TEXT NOT NULL,
	by          TEXT NOT NULL,
	at          INTEGER NOT NULL,
	undone      INTEGER NOT NULL DEFAULT 0,
	undone_by   TEXT NOT NULL DEFAULT '',
	FOREIGN KEY (association, question) REFERENCES questions (association, id) ON DELETE CASCADE
) STRICT;
CREATE INDEX given_question ON given (association, question, seq);

CREATE TABLE views (
	seq         INTEGER PRIMARY KEY,
	association TEXT NOT NULL,
	question    TEXT NOT NULL,
	id          TEXT NOT NULL,
	by          TEXT NOT NULL,
	private     INTEGER NOT NULL,
	named       INTEGER NOT NULL,
	at          INTEGER NOT NULL,
	UNIQUE (association, question, id),
	FOREIGN KEY (association, question) REFERENCES questions (association, id) ON DELETE CASCADE
) STRICT;

CREATE TABLE threads (
	association TEXT NOT NULL,
	platform    TEXT NOT NULL,
	workspace   TEXT NOT NULL,
	channel     TEXT NOT NULL,
	thread      TEXT NOT NULL,
	question    TEXT NOT NULL,
	role        TEXT NOT NULL,
	at          INTEGER NOT NULL,
	PRIMARY KEY (association, platform, workspace, channel, thread),
	FOREIGN KEY (association, question) REFERENCES questions (association, id) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX threads_question ON threads (association, question);

CREATE TABLE buttons (
	association TEXT NOT NULL,
	id          TEXT NOT NULL,
	question    TEXT NOT NULL,
	action      TEXT NOT NULL,
	at          INTEGER NOT NULL,
	PRIMARY KEY (association, id),
	FOREIGN KEY (association, question) REFERENCES questions (association, id) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX buttons_question ON buttons (association, question);

CREATE TABLE deliveries (
	association TEXT NOT NULL,
	key         TEXT NOT NULL,
	expires     INTEGER NOT NULL,
	PRIMARY KEY (association, key)
) STRICT, WITHOUT ROWID;
CREATE INDEX deliveries_expires ON deliveries (association, expires);
