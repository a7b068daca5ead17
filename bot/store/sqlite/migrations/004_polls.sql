-- What a crew rules on together, and the name that somebody wants in a view.

ALTER TABLE views DROP COLUMN named;
ALTER TABLE views ADD COLUMN name TEXT NOT NULL DEFAULT '';

CREATE TABLE polls (
	association TEXT NOT NULL,
	question    TEXT NOT NULL,
	by          TEXT NOT NULL,
	season      TEXT NOT NULL,
	at          INTEGER NOT NULL,
	closed      INTEGER NOT NULL DEFAULT 0,
	PRIMARY KEY (association, question),
	FOREIGN KEY (association, question) REFERENCES questions (association, id) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX polls_closed ON polls (association, closed, at);

-- Votes are there while their poll is open.
CREATE TABLE votes (
	association TEXT NOT NULL,
	question    TEXT NOT NULL,
	by          TEXT NOT NULL,
	call        TEXT NOT NULL,
	team        TEXT NOT NULL,
	at          INTEGER NOT NULL,
	PRIMARY KEY (association, question, by),
	FOREIGN KEY (association, question) REFERENCES polls (association, question) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX votes_by ON votes (association, by);

-- What is left of them once it is closed.
CREATE TABLE vote_counts (
	association TEXT NOT NULL,
	question    TEXT NOT NULL,
	call        TEXT NOT NULL,
	team        TEXT NOT NULL,
	members     INTEGER NOT NULL,
	agreed      INTEGER NOT NULL,
	PRIMARY KEY (association, question, call, team),
	FOREIGN KEY (association, question) REFERENCES polls (association, question) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
