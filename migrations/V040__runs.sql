-- What runs by itself: one row for each run, and for each time zone of a local one, with how it went the last time.

create table run (
    room     text        not null,
    name     text        not null,
    -- empty where a run is not local
    zone     text        not null default '',
    due_at   timestamptz not null,
    began_at timestamptz not null,
    -- null while it runs, or where it was cut off and is not done again yet
    ended_at timestamptz,
    -- why it failed; null when it went well
    trouble  text,
    -- when it last went well
    done_at  timestamptz,
    node     text        not null,
    primary key (room, name, zone),
    check (trouble is null or ended_at is not null)
);
