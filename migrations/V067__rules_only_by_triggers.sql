-- What makes work due stands in care_trigger; the columns of the first year go.
alter table care_rule
    drop column trigger_kind,
    drop column threshold,
    drop column days_to_act;

-- The past of a position, whichever unit stood in it.
create index task_position on task (position_id) where state = 'SIGNED' and position_id is not null;
