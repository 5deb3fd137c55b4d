package freshet.hire;

import freshet.pumps.PumpKind;
import java.time.LocalDate;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Counts the days of the hire desk. A day on which a unit was out for any part of it is a day out, and none that is left out; days are
 * those of the yard's calendar.
 */
@Component
class FiguresTable {

    private static final String DAYS = """
            with yard as (select distinct site_id from hire),
            kept as (
              select u.id, m.kind, s.zone,
                     datemultirange(daterange(greatest(u.in_care_from, :from), least(coalesce(u.retired_on, :to), :to), '[]')) as days
              from pump_unit u
              join pump_model m on m.id = u.model_id
              join stand st on st.unit_id = u.id and st.until is null
              join yard on yard.site_id = st.site_id
              join site s on s.id = st.site_id
              where u.customer_id is null and u.in_care_from <= :to and coalesce(u.retired_on, :to) >= greatest(u.in_care_from, :from)
            ), spell as (
              select k.id, 'OUT' as what, cast(h.out_at at time zone k.zone as date) as first, cast(h.in_at at time zone k.zone as date) as last
              from kept k join hire h on h.unit_id = k.id
              union all
              select k.id, 'STOPPED', cast(f.opened_at at time zone k.zone as date), cast(f.closed_at at time zone k.zone as date)
              from kept k join finding f on f.unit_id = k.id and f.severity >= 3
              union all
              select k.id, 'STOPPED', cast(h.since at time zone k.zone as date), cast(h.released_at at time zone k.zone as date)
              from kept k join hold h on h.unit_id = k.id
            ), days as (
              select id, range_agg(daterange(first, coalesce(last, :to), '[]')) filter (where what = 'OUT') as out,
                     range_agg(daterange(first, coalesce(last, :to), '[]')) filter (where what = 'STOPPED') as stopped
              from spell where first <= :to and coalesce(last, :to) >= first
              group by id
            ), unit as (
              select k.kind, k.days, k.days * coalesce(d.out, '{}'::datemultirange) as out,
                     k.days * (coalesce(d.stopped, '{}'::datemultirange) - coalesce(d.out, '{}'::datemultirange)) as stopped
              from kept k left join days d on d.id = k.id
            )
            select kind, count(*) as units, count(*) filter (where isempty(out)) as never_out,
                   sum((select coalesce(sum(upper(r) - lower(r)), 0) from unnest(days) r)) as kept,
                   sum((select coalesce(sum(upper(r) - lower(r)), 0) from unnest(out) r)) as out,
                   sum((select coalesce(sum(upper(r) - lower(r)), 0) from unnest(stopped) r)) as stopped
            from unit group by kind order by kind
            """;

    private static final String COUNTS = """
            with of_days as (
              select h.*, cast(h.out_at at time zone s.zone as date) as out_on, s.zone
              from hire h join site s on s.id = h.site_id
            ), quarantine as (
              select h.since, h.released_at, cast(h.released_at at time zone s.zone as date) as ended_on
              from hold h join stand st on st.unit_id = h.unit_id and st.until is null join site s on s.id = st.site_id
              where h.kind = 'QUARANTINE'
            )
            select (select count(*) from of_days where out_on between :from and :to) as issued,
                   (select count(*) from of_days o where out_on between :from and :to and exists (
                       select 1 from hire b where b.unit_id = o.unit_id and b.id <> o.id and b.in_at <= o.out_at
                         and cast(b.in_at at time zone o.zone as date) = o.out_on)) as same_day,
                   (select count(*) from of_days where out_on between :from and :to and swap_reason = 'WRONG_PUMP') as wrong_pump,
                   (select count(*) from quarantine where ended_on between :from and :to) as quarantined,
                   (select avg(extract(epoch from released_at - since)) / 86400 from quarantine
                      where ended_on between :from and :to) as mean_days,
                   (select count(*) from quarantine where released_at is null) as in_quarantine
            """;

    private final JdbcClient jdbc;

    FiguresTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    DeskFigures figures(LocalDate from, LocalDate to, List<TurnAway> turnAways) {
        List<DeskFigures.Line> kinds = jdbc.sql(DAYS)
                .param("from", from)
                .param("to", to)
                .query((row, n) -> new DeskFigures.Line(
                        PumpKind.valueOf(row.getString("kind")),
                        row.getInt("units"),
                        row.getInt("never_out"),
                        row.getInt("kept"),
                        row.getInt("out"),
                        row.getInt("stopped")))
                .list();
        return jdbc.sql(COUNTS)
                .param("from", from)
                .param("to", to)
                .query((row, n) -> {
                    double mean = row.getDouble("mean_days");
                    Double meanDays = row.wasNull() ? null : mean;
                    return new DeskFigures(
                            from,
                            to,
                            kinds,
                            row.getInt("issued"),
                            row.getInt("same_day"),
                            row.getInt("wrong_pump"),
                            row.getInt("quarantined"),
                            meanDays,
                            row.getInt("in_quarantine"),
                            turnAways);
                })
                .single();
    }
}
