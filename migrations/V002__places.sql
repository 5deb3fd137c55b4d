-- Places: customers, sites with their time zone and season windows, positions where a pump stands.

create table customer (
    id      bigint generated always as identity primary key,
    name    text    not null check (length(name) between 1 and 100),
    phone   text,
    note    text,
    version integer not null default 0
);
create unique index customer_name on customer (lower(name));

create table site (
    id          bigint generated always as identity primary key,
    name        text    not null check (length(name) between 1 and 100),
    customer_id bigint references customer,
    zone        text    not null,
    address     text,
    version     integer not null default 0
);
create unique index site_name on site (lower(name));

-- Both ends count. A window whose end lies before its start wraps 31 December. 29 February is read as 28 in a common year.
create table season_window (
    id         bigint generated always as identity primary key,
    site_id    bigint   not null references site,
    kind       text     not null check (kind in ('OPENING', 'RUNNING', 'CLOSING')),
    name       text     not null check (length(name) between 1 and 60),
    from_month smallint not null,
    from_day   smallint not null,
    to_month   smallint not null,
    to_day     smallint not null,
    -- 2024 is a leap year, so 29 February passes and 31 February does not
    check (make_date(2024, from_month, from_day) is not null),
    check (make_date(2024, to_month, to_day) is not null)
);
create index season_window_site on season_window (site_id);

create table position (
    id      bigint generated always as identity primary key,
    site_id bigint  not null references site,
    name    text    not null check (length(name) between 1 and 100),
    kind    text    not null check (kind in ('PIT', 'WELL', 'TANK', 'PLANT_ROOM', 'STORE', 'OTHER')),
    note    text,
    version integer not null default 0
);
create unique index position_name on position (site_id, lower(name));
