-- Seasonal rules of the first year that nobody changed learn which smaller work they contain.

update care_rule r
set covers = cast(c.covers as text[])
from (values
    ('opening-utility-submersible', '{electrical,idle,oil-look,storage-turn}'),
    ('closing-utility-submersible', '{oil-look,storage-turn}'),
    ('opening-sump-with-float', '{electrical,monthly,weekly,wet-ground}'),
    ('winter-check-sump-with-float', '{monthly,weekly}'),
    ('opening-sewage', '{electrical,monthly,service,weekly}'),
    ('winter-check-sewage', '{monthly,weekly}'),
    ('opening-engine-trash', '{idle,monthly,storage-turn}'),
    ('closing-engine-trash', '{air-filter,engine-oil,monthly,storage-turn}'),
    ('opening-battery-backup', '{electrical,monthly}'),
    ('winter-check-battery-backup', '{monthly}'),
    ('opening-circulator', '{electrical,idle,monthly,weekly}'),
    ('closing-circulator', '{monthly,weekly}')
) as c (code, covers)
where r.code = c.code and r.version = 0 and r.covers = '{}';
