-- Repair work: for which findings of a unit, what it needs and costs, and what became of it.

create table repair (
    id             bigint generated always as identity primary key,
    unit_id        bigint        not null references pump_unit,
    what           text,
    planned_for    date,
    planned_at     timestamptz   not null,
    planned_by     bigint        not null references account,
    labour_minutes integer check (labour_minutes between 0 and 10000),
    -- an hour
    labour_rate    numeric(8, 2) check (labour_rate >= 0),
    other_cost     numeric(8, 2) check (other_cost >= 0),
    -- of a new pump for the same work, and what such a pump is expected to last
    price_new      numeric(8, 2) check (price_new > 0),
    life_years     integer check (life_years between 1 and 50),
    ended          text check (ended in ('DONE', 'GIVEN_UP')),
    ended_on       date,
    ended_at       timestamptz,
    ended_by       bigint references account,
    as_found       text,
    as_left        text,
    given_up_why   text,
    version        integer       not null default 0,
    check (num_nonnulls(ended, ended_on, ended_at, ended_by) in (0, 4)),
    check ((ended = 'DONE') is not true or as_left is not null),
    check ((ended = 'GIVEN_UP') is not true or given_up_why is not null)
);
create index repair_unit on repair (unit_id);
create index repair_open on repair (unit_id) where ended is null;

create table repair_finding (
    repair_id  bigint not null references repair,
    finding_id bigint not null references finding,
    primary key (repair_id, finding_id)
);
create index repair_finding_finding on repair_finding (finding_id);

create table repair_part (
    repair_id   bigint        not null references repair,
    ordinal     integer       not null,
    number      text,
    description text          not null,
    quantity    numeric(6, 2) not null check (quantity > 0),
    unit_price  numeric(8, 2) check (unit_price >= 0),
    lead_days   integer check (lead_days between 0 and 365),
    ordered_on  date,
    expected_on date,
    arrived_on  date,
    primary key (repair_id, ordinal)
);
