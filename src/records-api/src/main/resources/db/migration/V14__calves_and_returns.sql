-- Calves of a calving, as JSON text; the day on which a cow that had left came back.

ALTER TABLE calving ADD COLUMN calves VARCHAR(4000);
ALTER TABLE departure ADD COLUMN returned_on VARCHAR(10);
