-- Work done without a signal, as it is delivered: each entry once, whatever is sent how often.

create table delivery (
    id          bigint generated always as identity primary key,
    person_id   bigint      not null references account,
    -- made up by the phone when the entry was written
    key         uuid        not null,
    kind        text        not null check (kind in ('TASK', 'READING', 'FLOW_TEST', 'FINDING')),
    ordinal     bigint      not null,
    -- by the phone's clock, and by how many milliseconds the server's was ahead when the phone took the work along
    done_at     timestamptz not null,
    offset_ms   bigint      not null,
    received_at timestamptz not null,
    -- what was answered first, and is answered to every repetition
    outcome     jsonb,
    unique (person_id, key)
);

-- An entry that did not fit what happened meanwhile: kept as it was typed until somebody settles it.
create table conflict (
    id          bigint generated always as identity primary key,
    delivery_id bigint      not null unique references delivery,
    person_id   bigint      not null references account,
    unit_id     bigint      not null references pump_unit,
    why         text        not null check (why in ('SIGNED', 'CHANGED', 'WITHDRAWN', 'RETIRED', 'METER', 'MOVED')),
    title       text        not null,
    entry       jsonb       not null,
    found_at    timestamptz not null,
    settled_at  timestamptz,
    settled_by  bigint references account,
    settled_how text check (settled_how in ('KEEP', 'ADD', 'DISCARD')),
    settled_why text,
    link        text,
    check ((settled_at is null) = (settled_how is null)),
    check (settled_how <> 'DISCARD' or settled_why is not null)
);
create index conflict_open on conflict (person_id) where settled_at is null;
