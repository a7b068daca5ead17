-- When a view was handed in, and when a poll closes by itself.

ALTER TABLE views ADD COLUMN handed INTEGER NOT NULL DEFAULT 0;
ALTER TABLE polls ADD COLUMN closes INTEGER NOT NULL DEFAULT 0;
