-- Units that are held: kept apart after a hire, or tagged out. Only a signed record ends it.

create table hold (
    id                 bigint generated always as identity primary key,
    unit_id            bigint      not null references pump_unit,
    kind               text        not null check (kind in ('QUARANTINE', 'TAGGED_OUT')),
    -- words that somebody wrote, or a message with what it is filled with
    why                text,
    why_code           text,
    why_args           text[]      not null default '{}',
    since              timestamptz not null,
    held_by            bigint      not null references account,
    released_at        timestamptz,
    released_by        bigint references account,
    released_record_id bigint references service_record,
    check (num_nonnulls(why, why_code) = 1),
    check (num_nonnulls(released_at, released_by, released_record_id) in (0, 3))
);
create unique index hold_open on hold (unit_id, kind) where released_at is null;
create index hold_unit on hold (unit_id);
