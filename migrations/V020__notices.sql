-- Notices: which mail each person wants, mail on its way, and the secret addresses of calendars.

create table notice_choice (
    account_id    bigint primary key references account,
    -- where mail goes once whoever reads it said yes, and an address that was asked and has not answered yet
    address       text,
    asked_address text,
    asked_at      timestamptz,
    rhythm        text        not null default 'NONE' check (rhythm in ('NONE', 'DAILY', 'WEEKLY')),
    weekday       smallint    not null default 1 check (weekday between 1 and 7),
    send_hour     smallint    not null default 6 check (send_hour between 0 and 23),
    -- by the clock on the wall of the place; may pass midnight
    quiet_from    time,
    quiet_to      time,
    every_site    boolean     not null default true,
    tell_overdue  boolean     not null default true,
    overdue_days  integer     not null default 7 check (overdue_days between 0 and 365),
    tell_danger   boolean     not null default true,
    -- no digest whose hour was before this
    chosen_at     timestamptz not null,
    version       integer     not null default 0,
    check ((quiet_from is null) = (quiet_to is null)),
    check (quiet_from <> quiet_to)
);

create table notice_site (
    account_id bigint not null references notice_choice,
    site_id    bigint not null references site,
    primary key (account_id, site_id)
);

-- A mail is worded when it is sent, from what stands then; the row says only that it is owed, or what became of it.
create table notice_mail (
    id          bigint generated always as identity primary key,
    account_id  bigint      not null references account,
    kind        text        not null check (kind in ('ADDRESS', 'DIGEST', 'OVERDUE', 'DANGER')),
    subject     text        not null,
    day         date        not null,
    zone        text        not null,
    state       text        not null check (state in ('WAITING', 'SENT', 'NOTHING', 'REPLACED', 'STOPPED', 'GIVEN_UP')),
    queued_at   timestamptz not null,
    not_before  timestamptz not null,
    tries       integer     not null default 0,
    trouble     text,
    sent_at     timestamptz,
    sent_to     text,
    title       text,
    message_id  uuid        not null default gen_random_uuid(),
    -- of the secret in its link, which stops such mail or says yes to an address
    link_digest text unique,
    -- never a second mail about one thing on one day
    unique (account_id, subject, day)
);
create index notice_mail_waiting on notice_mail (not_before) where state = 'WAITING';
create index notice_mail_queued on notice_mail (queued_at);

-- Which late task was told to whom: once for each day that it was due.
create table notice_task (
    account_id bigint not null references account,
    task_id    bigint not null references task,
    due_on     date   not null,
    mail_id    bigint references notice_mail on delete set null,
    primary key (account_id, task_id, due_on)
);
create index notice_task_mail on notice_task (mail_id);

-- Only the digest of a calendar's address is kept.
create table calendar_feed (
    account_id  bigint      not null references account,
    site_id     bigint      not null references site,
    digest      text        not null unique,
    made_at     timestamptz not null,
    -- what it last said, and since when
    said_digest text,
    said_at     timestamptz,
    primary key (account_id, site_id)
);

-- How a task is known to calendars: the same for everybody, its sequence grows with each change of what is said.
create table calendar_event (
    task_id     bigint primary key references task,
    uid         uuid        not null default gen_random_uuid(),
    sequence    integer     not null default 0,
    said_digest text        not null,
    changed_at  timestamptz not null
);
