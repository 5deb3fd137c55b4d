-- Hires: what went out to whom and until when, how it came back, and who was turned away.

create table hire (
    id            bigint generated always as identity primary key,
    unit_id       bigint      not null references pump_unit,
    -- the yard it went out from: its days are those of this site
    site_id       bigint      not null references site,
    customer_id   bigint references customer,
    hirer         text        not null check (length(hirer) between 1 and 100),
    phone         text,
    out_at        timestamptz not null,
    due_back_on   date        not null,
    hours_out     numeric(12, 2),
    fuel_out      smallint check (fuel_out between 0 and 100),
    condition_out text,
    -- who took it along, was told the cautions and was read the limits
    taken_by      text        not null,
    told          text[]      not null,
    -- the reasons that limited its use when it went out; empty when it was ready
    limits        jsonb       not null default '[]',
    -- the last day of its electrical proof when it went out; null for an engine
    proof_until   date,
    issued_by     bigint      not null references account,
    issued_at     timestamptz not null,
    in_at         timestamptz,
    hours_in      numeric(12, 2),
    fuel_in       smallint check (fuel_in between 0 and 100),
    condition_in  text,
    liquid        text check (liquid in ('CLEAN', 'FOUL', 'SALT', 'CHEMICAL', 'UNKNOWN')),
    ran_dry       boolean,
    cord_damaged  boolean,
    returned_by   bigint references account,
    -- when another unit took its place: why, and the hire of that
    swap_reason   text check (swap_reason in ('WRONG_PUMP', 'FAILED', 'OTHER')),
    swapped_to    bigint references hire,
    version       integer     not null default 0,
    check (in_at is null or in_at >= out_at),
    check (num_nonnulls(in_at, liquid, ran_dry, cord_damaged, returned_by) in (0, 5)),
    check ((swap_reason is null) = (swapped_to is null))
);
-- a unit is out once
create unique index hire_open on hire (unit_id) where in_at is null;
create index hire_unit on hire (unit_id, out_at);
create index hire_due on hire (due_back_on) where in_at is null;
create index hire_back on hire (in_at);
create index hire_swapped on hire (swapped_to);

-- The kit as it stood in the unit's list, what of it went out, and what came back.
create table hire_piece (
    hire_id      bigint   not null references hire,
    ordinal      integer  not null,
    kind         text     not null,
    description  text     not null,
    quantity     integer  not null,
    quantity_out integer  not null check (quantity_out between 0 and quantity),
    quantity_in  integer check (quantity_in between 0 and quantity_out),
    primary key (hire_id, ordinal)
);

create table hire_extension (
    id          bigint generated always as identity primary key,
    hire_id     bigint      not null references hire,
    was_due_on  date        not null,
    due_back_on date        not null,
    by_person   bigint      not null references account,
    at          timestamptz not null
);
create index hire_extension_hire on hire_extension (hire_id);

create table turn_away (
    id        bigint generated always as identity primary key,
    site_id   bigint      not null references site,
    on_day    date        not null,
    reason    text        not null check (reason in ('ALL_OUT', 'NOT_READY', 'NOT_ABLE', 'NOT_KEPT', 'OTHER')),
    pump_kind text,
    note      text,
    noted_by  bigint      not null references account,
    noted_at  timestamptz not null
);
create index turn_away_day on turn_away (on_day);

-- What is printed on every sheet that goes out.
create table hire_desk (
    id             boolean primary key default true check (id),
    emergency_line text not null
);
