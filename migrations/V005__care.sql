-- Care: checklists and their versions, rules that make work due, tasks, signed records, findings, and one summary row a unit.

create table checklist (
    id        bigint generated always as identity primary key,
    code      text    not null unique,
    name      text    not null,
    pump_kind text,
    phase     text    not null,
    minutes   integer not null check (minutes between 1 and 480)
);

create table checklist_version (
    id           bigint generated always as identity primary key,
    checklist_id bigint      not null references checklist,
    number       integer     not null,
    published_at timestamptz not null,
    published_by bigint references account,
    unique (checklist_id, number)
);

create table check_line (
    id                   bigint generated always as identity primary key,
    checklist_version_id bigint  not null references checklist_version,
    ordinal              integer not null,
    section              text    not null,
    question             text    not null,
    hint                 text,
    -- stands before the question, on the step where it can hurt
    caution              text,
    answer_kind          text    not null check (answer_kind in ('YES_NO', 'NUMBER', 'CHOICE', 'TEXT')),
    unit                 text,
    pass_low             double precision,
    pass_high            double precision,
    watch_low            double precision,
    watch_high           double precision,
    -- one choice a line: verdict, a tab, the words
    choices              text,
    -- the severity of the finding that a failed answer makes; null: a failed answer makes none
    fail_severity        smallint check (fail_severity between 0 and 4),
    required             boolean not null,
    safety               boolean not null,
    may_not_apply        boolean not null,
    as_left              boolean not null,
    competence           text check (competence in ('ELECTRICAL', 'GAS', 'LICENCE')),
    source               text,
    unique (checklist_version_id, ordinal)
);

create table care_rule (
    id           bigint generated always as identity primary key,
    code         text    not null unique,
    name         text    not null,
    trigger_kind text    not null check (trigger_kind in ('OPENING', 'CLOSING', 'CAPACITY_BELOW')),
    pump_kind    text,
    checklist_id bigint references checklist,
    -- for CAPACITY_BELOW: the fraction of reference flow
    threshold    double precision,
    days_to_act  integer,
    active       boolean not null default true,
    source       text,
    version      integer not null default 0
);

create table task (
    id            bigint generated always as identity primary key,
    rule_id       bigint references care_rule,
    unit_id       bigint      not null references pump_unit,
    -- which occurrence of the rule this is: makes planning twice harmless
    occurrence    text        not null,
    site_id       bigint      not null references site,
    position_id   bigint references position,
    checklist_id  bigint references checklist,
    title         text        not null,
    why           text,
    opens_on      date        not null,
    due_on        date        not null,
    minutes       integer     not null,
    state         text        not null check (state in ('OPEN', 'SIGNED', 'WITHDRAWN')),
    state_why     text,
    assigned_to   bigint references account,
    started_at    timestamptz,
    planned_at    timestamptz not null,
    version       integer     not null default 0,
    check (opens_on <= due_on),
    unique (unit_id, rule_id, occurrence)
);
create index task_open on task (due_on, unit_id) where state = 'OPEN';
create index task_unit on task (unit_id);
create index task_site on task (site_id, opens_on);

-- What has been answered so far; becomes the record when it is signed.
create table task_answer (
    task_id       bigint      not null references task,
    check_line_id bigint      not null references check_line,
    answer        text,
    as_left       text,
    finding       text,
    severity      smallint check (severity between 0 and 4),
    answered_by   bigint references account,
    answered_at   timestamptz not null,
    primary key (task_id, check_line_id)
);

create table service_record (
    id                   bigint generated always as identity primary key,
    -- a correction is a new record of the same task that names the old one
    corrects_id          bigint unique references service_record,
    task_id              bigint      not null references task,
    unit_id              bigint      not null references pump_unit,
    checklist_version_id bigint references checklist_version,
    title                text        not null,
    tag                  text        not null,
    serial               text,
    place                text        not null,
    started_at           timestamptz not null,
    ended_at             timestamptz not null,
    signed_at            timestamptz not null,
    signed_by            bigint      not null references account,
    signed_name          text        not null,
    correction_why       text,
    note                 text,
    -- SHA-256 over what was signed, chained to the record before it of the same unit
    digest               text        not null,
    check (started_at <= ended_at)
);
create unique index service_record_task on service_record (task_id) where corrects_id is null;
create index service_record_unit on service_record (unit_id, ended_at);

create table record_line (
    record_id     bigint  not null references service_record,
    ordinal       integer not null,
    check_line_id bigint references check_line,
    section       text    not null,
    question      text    not null,
    answer        text,
    number        double precision,
    unit          text,
    limits        text,
    verdict       text    not null check (verdict in ('PASS', 'WATCH', 'FAIL', 'DOES_NOT_APPLY', 'NOTED', 'LEFT')),
    as_left       text,
    primary key (record_id, ordinal)
);
create trigger service_record_stays before update or delete on service_record
    for each row execute function refuse_change();
create trigger record_line_stays before update or delete on record_line
    for each row execute function refuse_change();

create table finding (
    id           bigint generated always as identity primary key,
    unit_id      bigint      not null references pump_unit,
    record_id    bigint references service_record,
    check_line_id bigint references check_line,
    severity     smallint    not null check (severity between 0 and 4),
    what         text        not null,
    opened_at    timestamptz not null,
    opened_by    bigint references account,
    closed_at    timestamptz,
    closed_by    bigint references account,
    closed_how   text,
    version      integer     not null default 0
);
create index finding_open on finding (unit_id) where closed_at is null;

-- Computed from the rows above and from the readings; rebuilt by one command, compared by a test.
create table unit_summary (
    unit_id             bigint  primary key references pump_unit,
    readiness           text    not null check (readiness in ('READY', 'LIMITS', 'NOT_READY', 'UNKNOWN')),
    -- the reasons, worst first, as codes with their arguments
    reasons             jsonb   not null,
    ready_until         date,
    remaining_fraction  double precision,
    expanded_uncertainty double precision,
    stated_at_head_m    double precision,
    tested_at           timestamptz,
    next_due_on         date,
    open_tasks          integer not null
);
create index unit_summary_readiness on unit_summary (readiness);
