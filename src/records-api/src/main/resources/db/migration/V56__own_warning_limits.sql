-- The usual ranges a farm moved outwards, from the day of the set on.

ALTER TABLE setting ADD COLUMN warning_limits VARCHAR(4000);
