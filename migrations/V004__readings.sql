-- Readings: meters and what they showed, flow tests as they were measured. Figures are computed from these rows.

create table meter (
    id           bigint generated always as identity primary key,
    unit_id      bigint         not null references pump_unit,
    kind         text           not null check (kind in ('RUN_HOURS', 'STARTS')),
    fitted_at    timestamptz    not null,
    first_value  numeric(12, 2) not null check (first_value >= 0),
    -- the value at which it starts again from 0, such as 99999.9
    rolls_over_at numeric(12, 2) check (rolls_over_at > 0),
    removed_at   timestamptz,
    last_value   numeric(12, 2),
    note         text,
    check (removed_at is null or (removed_at >= fitted_at and last_value is not null))
);
create unique index meter_now on meter (unit_id, kind) where removed_at is null;

create table meter_reading (
    id          bigint generated always as identity primary key,
    meter_id    bigint         not null references meter,
    at          timestamptz    not null,
    value       numeric(12, 2) not null check (value >= 0),
    -- the meter passed its highest value since the reading before
    rolled_over boolean        not null default false,
    note        text,
    recorded_by bigint references account,
    recorded_at timestamptz    not null,
    unique (meter_id, at)
);

create table flow_test (
    id                 bigint generated always as identity primary key,
    unit_id            bigint           not null references pump_unit,
    at                 timestamptz      not null,
    rig                text,
    -- how the head was found: computed through the line, or read on a gauge
    head_by            text             not null check (head_by in ('LINE', 'GAUGE')),
    container_l        double precision not null check (container_l > 0),
    container_u_l      double precision not null check (container_u_l >= 0),
    timing_u_s         double precision not null check (timing_u_s >= 0),
    lift_m             double precision,
    lift_u_m           double precision not null check (lift_u_m >= 0),
    gauge_kpa          double precision,
    gauge_u_kpa        double precision,
    gauge_above_water_m double precision,
    gauge_bore_mm      double precision,
    water_c            double precision not null,
    pump_outlet_mm     double precision,
    exit_loss          double precision not null,
    volts              double precision,
    amps               double precision,
    frequency_hz       double precision,
    note               text,
    recorded_by        bigint references account,
    recorded_at        timestamptz      not null,
    -- a wrong test is withdrawn with a reason, never edited
    withdrawn_at       timestamptz,
    withdrawn_by       bigint references account,
    withdrawn_why      text,
    check (head_by <> 'LINE' or lift_m is not null),
    check (head_by <> 'GAUGE' or (gauge_kpa is not null and gauge_above_water_m is not null
                                  and gauge_bore_mm is not null and gauge_u_kpa is not null))
);
create index flow_test_unit on flow_test (unit_id, at);

create table flow_test_repeat (
    flow_test_id bigint           not null references flow_test,
    ordinal      integer          not null,
    seconds      double precision not null check (seconds > 0),
    primary key (flow_test_id, ordinal)
);

create table flow_test_section (
    flow_test_id      bigint           not null references flow_test,
    ordinal           integer          not null,
    piece             text             not null,
    inner_diameter_mm double precision not null check (inner_diameter_mm > 0),
    length_m          double precision not null check (length_m >= 0),
    roughness_mm      double precision,
    hazen_williams_c  double precision,
    loss_coefficient  double precision not null check (loss_coefficient >= 0),
    primary key (flow_test_id, ordinal)
);
