package freshet.board;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rules that a new install begins with: one for each seasonal checklist, and the one on remaining capacity. */
@Component("firstYearRules")
class CareRules {

    /** Of reference flow; below it a pump is derated. */
    static final double CAPACITY_THRESHOLD = 0.80;

    static final String CAPACITY_SOURCE =
            "common practice, no source: pass from 90 %, watch from 80 %, repair below 70 %";
    private static final int DAYS_TO_ACT = 14;

    private final JdbcClient jdbc;

    CareRules(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Adds what is missing; a rule that is there already stays as it is. */
    void installDefaults() {
        jdbc.sql("""
                insert into care_rule (code, job, name, trigger_kind, pump_kind, checklist_id, source)
                select code, lower(phase), split_part(name, ',', 1), phase, pump_kind, id, 'common practice, no source'
                from checklist where phase in ('OPENING', 'CLOSING') order by id
                on conflict (code) do nothing""").update();
        jdbc.sql("""
                insert into care_rule (code, job, name, trigger_kind, checklist_id, threshold, days_to_act, source)
                select 'capacity-below', 'capacity', name, 'CAPACITY_BELOW', id, ?, ?, ? from checklist where phase = 'CAPACITY'
                on conflict (code) do nothing""").params(CAPACITY_THRESHOLD, DAYS_TO_ACT, CAPACITY_SOURCE).update();
    }
}
