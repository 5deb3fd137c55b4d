-- Findings: how it failed and from what, severities that were changed with a reason, and work that was put off to a day.

alter table finding
    -- the failure mode by its ISO 14224 code; null: nobody has said yet, UNK: looked at and not known
    add column mode  text check (mode ~ '^[A-Z]{3}$'),
    add column cause text;

create table finding_severity (
    id         bigint generated always as identity primary key,
    finding_id bigint      not null references finding,
    was        smallint    not null check (was between 0 and 4),
    became     smallint    not null check (became between 0 and 4),
    why        text        not null,
    changed_at timestamptz not null,
    changed_by bigint      not null references account,
    check (was <> became)
);
create index finding_severity_finding on finding_severity (finding_id);
create trigger finding_severity_stays before update or delete on finding_severity
    for each row execute function refuse_change();

-- Of several waivers of a finding the newest counts, as long as the finding is not worse than it was then.
create table waiver (
    id          bigint generated always as identity primary key,
    finding_id  bigint      not null references finding,
    severity    smallint    not null check (severity between 0 and 3),
    why         text        not null,
    -- whoever decided when that is not who wrote it down, such as a customer
    decided_by  text,
    -- the last day, at the site
    until       date        not null,
    put_off_at  timestamptz not null,
    put_off_by  bigint      not null references account
);
create index waiver_finding on waiver (finding_id);
create trigger waiver_stays before update or delete on waiver
    for each row execute function refuse_change();
