-- Changes of these kinds are found by their number, as those of the first kinds are.
CREATE INDEX milking_by_change ON milking (herd_id, change_seq);
CREATE INDEX service_by_change ON service (herd_id, change_seq);
CREATE INDEX pregnancy_check_by_change ON pregnancy_check (herd_id, change_seq);
CREATE INDEX treatment_by_change ON treatment (herd_id, change_seq);
CREATE INDEX foremilk_check_by_change ON foremilk_check (herd_id, change_seq);
CREATE INDEX tank_reading_by_change ON tank_reading (herd_id, change_seq);
CREATE INDEX tank_pickup_by_change ON tank_pickup (herd_id, change_seq);
CREATE INDEX milk_use_by_change ON milk_use (herd_id, change_seq);
CREATE INDEX price_by_change ON price (herd_id, change_seq);
