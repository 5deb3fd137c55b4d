-- People: who may sign in, what they are competent for, the keys programs use, and the trail of what was done.

create table account (
    id            bigint generated always as identity primary key,
    sign_in_name  text        not null check (sign_in_name ~ '^[^\s]{2,60}$'),
    full_name     text        not null check (length(full_name) between 1 and 100),
    role          text        not null check (role in ('OWNER', 'TECHNICIAN')),
    password_hash text        not null,
    unit_system   text        not null default 'US' check (unit_system in ('US', 'SI')),
    active        boolean     not null default true,
    created_at    timestamptz not null,
    version       integer     not null default 0
);
create unique index account_sign_in_name on account (lower(sign_in_name));

create table account_competence (
    account_id bigint not null references account,
    competence text   not null check (competence in ('ELECTRICAL', 'GAS', 'LICENCE')),
    primary key (account_id, competence)
);

-- Only the digest of a token is kept.
create table api_token (
    id         bigint generated always as identity primary key,
    account_id bigint      not null references account,
    label      text        not null check (length(label) between 1 and 60),
    digest     text        not null unique,
    created_at timestamptz not null,
    revoked_at timestamptz
);

create table audit_entry (
    id         bigint generated always as identity primary key,
    at         timestamptz not null,
    account_id bigint references account,
    action     text        not null,
    subject    text        not null,
    detail     text
);
create index audit_entry_subject on audit_entry (subject, at);

-- What is written in the trail or signed stays as it is.
create function refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'rows of % are never changed', tg_table_name using errcode = 'integrity_constraint_violation';
end
$$;
create trigger audit_entry_stays before update or delete on audit_entry
    for each row execute function refuse_change();
