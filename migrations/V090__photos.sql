-- Photos: kept once for each content, never changed; where one hangs is said beside it.

create table photo (
    id         bigint generated always as identity primary key,
    -- SHA-256 (FIPS 180-4) of the bytes as they are kept, without what the camera knew of the place
    sha256     text        not null unique,
    media_type text        not null check (media_type in ('image/jpeg', 'image/png', 'image/webp')),
    -- in pixels, as it is seen: turned as the camera says
    width      integer     not null check (width > 0),
    height     integer     not null check (height > 0),
    size       integer     not null check (size = length(bytes)),
    taken_at   timestamptz,
    kept_by    bigint      not null references account,
    kept_at    timestamptz not null,
    bytes      bytea       not null,
    -- a small picture of it; none where the server cannot read the format
    small      bytea,
    check (sha256 = encode(sha256(bytes), 'hex'))
);
-- pictures are packed already
alter table photo alter column bytes set storage external;
alter table photo alter column small set storage external;
create trigger photo_stays before update or delete on photo
    for each row execute function refuse_change();

-- A photo hung on something that may also be without it: a pump, a finding.
create table hung_photo (
    id       bigint generated always as identity primary key,
    photo_id bigint      not null references photo,
    -- what it hangs on, such as 'unit:17'
    subject  text        not null,
    caption  text,
    hung_by  bigint      not null references account,
    hung_at  timestamptz not null,
    unique (subject, photo_id)
);
