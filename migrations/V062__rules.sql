-- Rules with every trigger: what makes work due, for which pumps, and how it is counted on.

alter table care_rule
    alter column trigger_kind drop not null,
    -- what the work is: of rules with the same job, the nearest to a unit holds for it and the others do not
    add column job              text,
    -- at most one of pump_kind, model_id, site_id, position_id, unit_id; none: every pump
    add column model_id         bigint references pump_model,
    add column site_id          bigint references site,
    add column position_id      bigint references position,
    add column unit_id          bigint references pump_unit,
    -- FIXED counts on from the day it was due (legal intervals), SLIDING from the day it was done (wear)
    add column completion       text    not null default 'SLIDING' check (completion in ('FIXED', 'SLIDING')),
    -- whose past counts: the unit's, or that of the position whichever unit stands in it
    add column follows          text    not null default 'UNIT' check (follows in ('UNIT', 'POSITION')),
    add column opens_days_before integer not null default 14 check (opens_days_before between 0 and 366),
    -- days after the due day before it counts as late
    add column grace_days       integer not null default 0 check (grace_days between 0 and 366),
    -- the stretch of the year in which the work can be done, as --04-01; may wrap the year's end; both or neither
    add column access_from      text,
    add column access_to        text,
    add column once_per_season  boolean not null default false,
    -- when it holds: always, storage included (safety by the calendar), only in use, or only while laid up
    add column applies          text    not null default 'ALWAYS' check (applies in ('ALWAYS', 'IN_USE', 'LAID_UP')),
    -- the jobs that this work contains: done in their days, it satisfies them
    add column covers           text[]  not null default '{}',
    add constraint care_rule_access check ((access_from is null) = (access_to is null)),
    add constraint care_rule_scope check (num_nonnulls(pump_kind, model_id, site_id, position_id, unit_id) <= 1);
update care_rule set job = case trigger_kind when 'CAPACITY_BELOW' then 'capacity' else lower(trigger_kind) end;
alter table care_rule alter column job set not null;
create index care_rule_job on care_rule (job) where active;

-- A rule with several triggers is due at whichever comes first.
create table care_trigger (
    rule_id      bigint  not null references care_rule,
    ordinal      integer not null,
    kind         text    not null check (kind in ('CALENDAR', 'SEASON', 'RUN_HOURS', 'STARTS', 'EVENT', 'IDLE', 'CONDITION')),
    -- CALENDAR
    every_count  integer check (every_count > 0),
    every_unit   text check (every_unit in ('DAY', 'WEEK', 'MONTH', 'YEAR')),
    -- SEASON
    window_kind  text check (window_kind in ('OPENING', 'CLOSING')),
    -- RUN_HOURS, STARTS: each so many, and the first after so many on a new unit or new oil
    every_amount numeric(12, 2) check (every_amount > 0),
    first_amount numeric(12, 2) check (first_amount > 0),
    -- EVENT: the kind of happening, or RELOCATED; only the first of it since the unit was last opened
    event        text,
    first_only   boolean not null default false,
    -- IDLE: not run for so many days
    idle_days    integer check (idle_days > 0),
    -- CONDITION
    measure      text,
    threshold    double precision,
    -- EVENT, IDLE, CONDITION: due so many days after
    days_to_act  integer check (days_to_act between 0 and 366),
    primary key (rule_id, ordinal),
    check (case kind
             when 'CALENDAR' then every_count is not null and every_unit is not null
             when 'SEASON' then window_kind is not null
             when 'RUN_HOURS' then every_amount is not null
             when 'STARTS' then every_amount is not null
             when 'EVENT' then event is not null and days_to_act is not null
             when 'IDLE' then idle_days is not null and days_to_act is not null
             else measure is not null and threshold is not null and days_to_act is not null end)
);
insert into care_trigger (rule_id, ordinal, kind, window_kind)
    select id, 1, 'SEASON', trigger_kind from care_rule where trigger_kind in ('OPENING', 'CLOSING');
insert into care_trigger (rule_id, ordinal, kind, measure, threshold, days_to_act)
    select id, 1, 'CONDITION', 'CAPACITY', threshold, coalesce(days_to_act, 14) from care_rule where trigger_kind = 'CAPACITY_BELOW';

alter table task
    -- late only so many days after it was due
    add column grace_days integer not null default 0,
    -- the due day comes from how fast the unit is used and moves with each reading
    add column predicted  boolean not null default false,
    -- why it is due, as a message board.why.<code> and its arguments; the older column why holds words that somebody wrote
    add column why_code   text,
    add column why_args   text[] not null default '{}';
