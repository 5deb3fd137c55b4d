-- The language in which a person reads.
alter table account add column language text not null default 'EN' check (language in ('EN', 'ES'));
