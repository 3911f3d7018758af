-- How far the back row is stands once: in the Board's own size.

ALTER TABLE classroom DROP COLUMN back_row_feet;
