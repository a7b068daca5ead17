-- A bulletin in the program's own form, to post it again as it was.

ALTER TABLE bulletins ADD COLUMN data BLOB;
