-- Hands: how many minutes a week each person has for care work, the weeks they are away, and what is added for findings.

create table hand (
    person_id      bigint primary key references account,
    minutes_a_week integer not null check (minutes_a_week between 0 and 6000),
    version        integer not null default 0
);

create table hand_off (
    person_id bigint not null references account,
    -- the Monday of the ISO week
    monday    date   not null check (extract(isodow from monday) = 1),
    primary key (person_id, monday)
);

-- At most one row; without it the room's own default holds.
create table hand_setting (
    id               smallint primary key default 1 check (id = 1),
    findings_percent integer not null check (findings_percent between 0 and 200),
    version          integer not null default 0
);
