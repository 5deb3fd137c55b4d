-- Rounds: what somebody goes and does on a day, in order; whom nobody let in; and how one gets in at a place.

create table round (
    id           bigint generated always as identity primary key,
    name         text        not null check (length(name) between 1 and 100),
    day          date        not null,
    -- null: nobody yet
    person_id    bigint references account,
    made_by      bigint      not null references account,
    made_at      timestamptz not null,
    -- given up before it was gone; what was noted on it stays
    withdrawn_at timestamptz,
    withdrawn_by bigint references account,
    version      integer     not null default 0
);
create index round_day on round (day) where withdrawn_at is null;

-- A stop is a task, or a pump to look at; one task may be on several rounds, and each says so.
create table round_stop (
    id       bigint generated always as identity primary key,
    round_id bigint  not null references round,
    ordinal  integer not null,
    task_id  bigint references task,
    unit_id  bigint references pump_unit,
    -- of a pump to look at
    seen_at  timestamptz,
    seen_by  bigint references account,
    check (num_nonnulls(task_id, unit_id) = 1),
    unique (round_id, task_id),
    unique (round_id, unit_id),
    unique (round_id, ordinal) deferrable initially deferred
);
create index round_stop_task on round_stop (task_id);
create index round_stop_unit on round_stop (unit_id);

-- Who stood before a shut door and when: kept whatever becomes of the round, and never changed.
create table no_access (
    id       bigint generated always as identity primary key,
    round_id bigint      not null references round,
    task_id  bigint references task,
    unit_id  bigint      not null references pump_unit,
    site_id  bigint      not null references site,
    at       timestamptz not null,
    noted_at timestamptz not null,
    noted_by bigint      not null references account,
    why      text        not null check (why in ('NOBODY_THERE', 'LOCKED', 'REFUSED', 'NOT_SAFE', 'IN_USE', 'OTHER')),
    note     text
);
create index no_access_unit on no_access (unit_id, at);
create trigger no_access_stays before update or delete on no_access
    for each row execute function refuse_change();

-- Keys, gate, dog, parking, whom to ring: written by whoever goes there.
create table access_note (
    site_id    bigint primary key references site,
    note       text        not null,
    written_at timestamptz not null,
    written_by bigint      not null references account,
    version    integer     not null default 0
);
