-- A task that was begun stays with the version of its checklist that it was begun with, and keeps what was typed beside the lines;
-- what a line was measured with stands on its record.

create table task_sheet (
    task_id              bigint primary key references task,
    checklist_version_id bigint not null references checklist_version,
    -- as typed, until the task is signed
    began                text,
    ended                text,
    instrument           text,
    note                 text
);
insert into task_sheet (task_id, checklist_version_id)
select t.id,
       coalesce((select max(l.checklist_version_id) from task_answer a join check_line l on l.id = a.check_line_id where a.task_id = t.id),
                (select max(v.id) from checklist_version v where v.checklist_id = t.checklist_id))
from task t
where t.state = 'OPEN' and t.started_at is not null and t.checklist_id is not null;

alter table record_line add column instrument text;

-- what each person typed last, to begin the next task with
create table instrument_in_hand (
    account_id bigint primary key references account,
    instrument text not null
);
