-- Up to three reasons for an animal to leave; the first is the one that counts.

ALTER TABLE departure ADD COLUMN second_reason VARCHAR(60);
ALTER TABLE departure ADD COLUMN third_reason VARCHAR(60);
