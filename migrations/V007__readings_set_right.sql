-- A wrong reading is withdrawn with a reason, never edited and never deleted.
alter table meter_reading
    add column withdrawn_at  timestamptz,
    add column withdrawn_by  bigint references account,
    add column withdrawn_why text,
    drop constraint meter_reading_meter_id_at_key;
create unique index meter_reading_at on meter_reading (meter_id, at) where withdrawn_at is null;

-- Nobody saw this meter being fitted: it is known from its readings only, and its first row repeats the first of them.
alter table meter add column implied boolean not null default false;

-- What a flow meter in the line showed, to compare with the container.
alter table flow_test add column meter_flow_m3h double precision check (meter_flow_m3h > 0);

-- A unit cannot be tested twice at one time: the same form sent twice is kept once.
create unique index flow_test_at on flow_test (unit_id, at) where withdrawn_at is null;
