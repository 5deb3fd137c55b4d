-- A line can name what it was measured with, else what was named for the whole task stands; a line of a checklist can ask for it.
-- No line that was published before asks.

alter table check_line add column asks_instrument boolean not null default false;
alter table task_answer add column instrument text;

-- what a person measured with before
create index service_record_signer on service_record (signed_by, id);
