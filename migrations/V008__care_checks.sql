-- What a signed checklist says about the unit, and checks whose limits are fractions of a figure on the model's plate.

alter table checklist
    add column effect text not null default 'NONE' check (effect in ('PROVES', 'LAYS_UP', 'NONE'));

alter table check_line
    add column rated_by text check (rated_by in ('CURRENT', 'VOLTAGE'));
