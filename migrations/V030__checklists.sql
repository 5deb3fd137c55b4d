-- Checklists that an owner changes: every version keeps its minutes and who said what was changed, a line is known through its
-- versions, and what is published is never changed.

alter table checklist_version
    add column minutes integer check (minutes between 1 and 480),
    add column note    text;
update checklist_version v set minutes = c.minutes from checklist c where c.id = v.checklist_id;
alter table checklist_version alter column minutes set not null;
comment on column checklist.minutes is 'what to plan with now: those of the newest version';

alter table check_line
    -- the line of the first version that has it; null: this one
    add column origin_id     bigint references check_line,
    -- the lowest severity that this line may be given; a line that has one is never taken out
    add column held_severity smallint check (held_severity between 0 and 4),
    add constraint check_line_held check (held_severity is null or fail_severity is not null and fail_severity >= held_severity);
update check_line set held_severity = fail_severity where fail_severity = 4;

create trigger checklist_version_stays before update or delete on checklist_version
    for each row execute function refuse_change();
create trigger check_line_stays before update or delete on check_line
    for each row execute function refuse_change();
