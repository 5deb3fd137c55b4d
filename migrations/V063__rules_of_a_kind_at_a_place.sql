-- A rule for a site or a position may be for one kind of pump only, the kind of its checklist; and rules of the first year get their trigger.

alter table care_rule
    drop constraint care_rule_scope,
    add constraint care_rule_scope check (
        num_nonnulls(model_id, site_id, position_id, unit_id) <= 1
        and (pump_kind is null or num_nonnulls(model_id, unit_id) = 0));

insert into care_trigger (rule_id, ordinal, kind, window_kind)
    select id, 1, 'SEASON', trigger_kind from care_rule r
    where trigger_kind in ('OPENING', 'CLOSING') and not exists (select 1 from care_trigger t where t.rule_id = r.id);
insert into care_trigger (rule_id, ordinal, kind, measure, threshold, days_to_act)
    select id, 1, 'CONDITION', 'CAPACITY', threshold, coalesce(days_to_act, 14) from care_rule r
    where trigger_kind = 'CAPACITY_BELOW' and not exists (select 1 from care_trigger t where t.rule_id = r.id);
