-- Pumps: models with their rated curve, units with their tag, where each unit has stood, and the kit that goes with it.

create table pump_model (
    id                       bigint generated always as identity primary key,
    name                     text             not null check (length(name) between 1 and 100),
    kind                     text             not null check (kind in ('UTILITY_SUBMERSIBLE', 'SUMP_WITH_FLOAT', 'SEWAGE',
                                                                       'ENGINE_TRASH', 'BATTERY_BACKUP', 'CIRCULATOR')),
    drive                    text             not null check (drive in ('SINGLE_PHASE', 'THREE_PHASE', 'BATTERY', 'ENGINE')),
    has_float                boolean          not null,
    voltage_v                double precision check (voltage_v > 0),
    frequency_hz             double precision check (frequency_hz > 0),
    current_a                double precision check (current_a > 0),
    power_w                  double precision check (power_w > 0),
    duty                     text check (duty in ('S1', 'S2', 'S3')),
    -- minutes on load for S2, percent of the time for S3
    duty_value               double precision check (duty_value > 0),
    max_starts_per_hour      double precision check (max_starts_per_hour > 0),
    min_run_minutes_per_start double precision check (min_run_minutes_per_start > 0),
    inlet_mm                 double precision check (inlet_mm > 0),
    outlet_mm                double precision check (outlet_mm > 0),
    solids_mm                double precision check (solids_mm >= 0),
    max_liquid_c             double precision,
    curve_form               text             not null check (curve_form in ('TABLE', 'TWO_PARAMETER')),
    -- the standard uncertainty of the rated curve, as a fraction of flow; the default and its source are in the room
    curve_uncertainty        double precision not null check (curve_uncertainty >= 0 and curve_uncertainty < 1),
    curve_source             text,
    note                     text,
    version                  integer          not null default 0
);
create unique index pump_model_name on pump_model (lower(name));

-- A table has 2 to 40 points; the two-parameter form has its shut-off head and its open flow as two points.
create table curve_point (
    model_id bigint           not null references pump_model,
    ordinal  integer          not null,
    flow_m3h double precision not null check (flow_m3h >= 0),
    head_m   double precision not null,
    primary key (model_id, ordinal)
);

create table pump_unit (
    id           bigint generated always as identity primary key,
    tag          text    not null check (tag ~ '^[A-Za-z0-9][A-Za-z0-9-]{0,15}$'),
    serial       text,
    model_id     bigint  not null references pump_model,
    -- null: our own
    customer_id  bigint references customer,
    in_care_from date    not null,
    note         text,
    retired_on   date,
    retired_why  text,
    version      integer not null default 0
);
create unique index pump_unit_tag on pump_unit (lower(tag));
create index pump_unit_model on pump_unit (model_id);

-- The history of moves; the open one is where the unit stands now.
create table stand (
    id          bigint generated always as identity primary key,
    unit_id     bigint      not null references pump_unit,
    site_id     bigint      not null references site,
    position_id bigint references position,
    spot        text,
    since       timestamptz not null,
    until       timestamptz,
    moved_by    bigint references account,
    note        text,
    check (until is null or until >= since)
);
create unique index stand_now on stand (unit_id) where until is null;
create index stand_unit on stand (unit_id, since);
create index stand_site on stand (site_id) where until is null;

create table kit_item (
    id              bigint generated always as identity primary key,
    unit_id         bigint  not null references pump_unit,
    ordinal         integer not null,
    kind            text    not null check (kind in ('HOSE', 'ADAPTER', 'STRAINER', 'FLOAT_SWITCH', 'CLAMP',
                                                     'THREAD_SEALANT', 'CORD', 'ROPE', 'OTHER')),
    description     text    not null check (length(description) between 1 and 100),
    bore_mm         double precision check (bore_mm > 0),
    outlet_bore_mm  double precision check (outlet_bore_mm > 0),
    length_m        double precision check (length_m > 0),
    quantity        integer not null default 1 check (quantity > 0)
);
create index kit_item_unit on kit_item (unit_id);
