-- A new class is asked to find the question too, as the sets of an invented class and of a first visit are.

ALTER TABLE classroom ALTER COLUMN usual_parts SET DEFAULT 'reading bars equation answer label';
UPDATE classroom SET usual_parts = 'reading bars equation answer label' WHERE usual_parts = 'bars equation answer label';
