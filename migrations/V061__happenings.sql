-- What happened to a site, a position or a unit that may make work due: a storm, a power failure, a hire and its return.

create table happening (
    id            bigint generated always as identity primary key,
    kind          text        not null check (kind in ('STORM', 'POWER_FAILURE', 'DRY_RUN', 'HIGH_WATER', 'FOUL_USE', 'SALT_USE',
                                                       'CHEMICAL_USE', 'HIRE_OUT', 'HIRE_RETURN', 'REPAIRED')),
    happened_at   timestamptz not null,
    -- whom it touched: every unit that stood at the site or in the position then, or one unit
    site_id       bigint references site,
    position_id   bigint references position,
    unit_id       bigint references pump_unit,
    -- of HIRE_OUT: the last day of the hire, by the site's calendar
    due_back_on   date,
    note          text,
    reported_by   bigint references account,
    reported_at   timestamptz not null,
    -- a wrong report is withdrawn with a reason, never edited
    withdrawn_at  timestamptz,
    withdrawn_by  bigint references account,
    withdrawn_why text,
    check (num_nonnulls(site_id, position_id, unit_id) = 1),
    check (kind not in ('HIRE_OUT', 'HIRE_RETURN', 'REPAIRED') or unit_id is not null),
    check (due_back_on is null or kind = 'HIRE_OUT')
);
create index happening_site on happening (site_id, happened_at) where withdrawn_at is null;
create index happening_position on happening (position_id, happened_at) where withdrawn_at is null;
create index happening_unit on happening (unit_id, happened_at) where withdrawn_at is null;
