-- All meters of a unit, those that were taken off too.
create index meter_unit on meter (unit_id, kind, fitted_at);
