-- Photos at the lines of a task, as found and as left, and those that were signed with it.

create table task_photo (
    id            bigint generated always as identity primary key,
    task_id       bigint      not null references task,
    -- none: of the work as a whole
    check_line_id bigint references check_line,
    moment        text        not null check (moment in ('FOUND', 'LEFT')),
    photo_id      bigint      not null references photo,
    added_by      bigint      not null references account,
    added_at      timestamptz not null,
    unique nulls not distinct (task_id, check_line_id, moment, photo_id)
);

create table record_photo (
    record_id     bigint  not null references service_record,
    ordinal       integer not null,
    check_line_id bigint references check_line,
    moment        text    not null check (moment in ('FOUND', 'LEFT')),
    photo_id      bigint  not null references photo,
    -- of the photo when it was signed; stands in the record's digest
    sha256        text    not null,
    primary key (record_id, ordinal)
);
create trigger record_photo_stays before update or delete on record_photo
    for each row execute function refuse_change();
