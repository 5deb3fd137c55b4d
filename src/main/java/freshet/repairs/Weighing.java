package freshet.repairs;

import freshet.findings.FailureMode;
import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.Span;
import freshet.places.WindowKind;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.Readings;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Clock;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Gathers the sums for the question whether to repair or to replace. */
@Component
class Weighing {

    private static final int DAYS_AHEAD = 400;
    private static final BigDecimal DAYS_A_YEAR = new BigDecimal("365.25");
    /** Sump and well pumps and pumps in a pipe: medians of an old ASHRAE survey as HVAC tables give them, to be used with caution. */
    private static final int SURVEY_YEARS = 10;

    private final Findings findings;
    private final Readings readings;
    private final Pumps pumps;
    private final Places places;
    private final Clock clock;

    Weighing(Findings findings, Readings readings, Pumps pumps, Places places, Clock clock) {
        this.findings = findings;
        this.readings = readings;
        this.pumps = pumps;
        this.places = places;
        this.clock = clock;
    }

    ReplaceSheet sheet(Repair repair, List<Finding> its) {
        Unit unit = pumps.unit(repair.unitId());
        Site site = places.site(repair.siteId());
        LocalDate today = site.today(clock);
        Integer typed = repair.plan().lifeYears();
        Integer life = typed == null ? survey(unit.model().kind()) : typed;
        FailureMode mode = its.stream()
                .map(Finding::mode)
                .filter(each -> each != null && each != FailureMode.UNKNOWN)
                .max(Comparator.comparing(each -> sameFailures(unit, each, today)))
                .orElse(null);
        return new ReplaceSheet(
                repair.costs(),
                repair.plan().priceNew(),
                unit.inCareFrom(),
                years(unit.inCareFrom(), today),
                life,
                typed != null
                        ? ReplaceSheet.LifeFrom.TYPED
                        : life == null ? ReplaceSheet.LifeFrom.UNKNOWN : ReplaceSheet.LifeFrom.SURVEY,
                readings.capacity(unit.id())
                        .map(each -> new ReplaceSheet.Share(each.fraction(), each.expandedUncertainty(), each.headM()))
                        .orElse(null),
                mode,
                mode == null ? 0 : sameFailures(unit, mode, today),
                repair.plan().parts().stream()
                        .filter(part -> !part.here())
                        .map(Part::leadDays)
                        .filter(Objects::nonNull)
                        .max(Comparator.naturalOrder())
                        .orElse(null),
                seasonOpensOn(site, today),
                today);
    }

    private int sameFailures(Unit unit, FailureMode mode, LocalDate today) {
        LocalDate from = today.minusMonths(12);
        return (int) findings.findingsOf(unit.id()).stream()
                .filter(finding -> finding.mode() == mode)
                .filter(finding ->
                        !LocalDate.ofInstant(finding.openedAt(), finding.zone()).isBefore(from))
                .count();
    }

    private static @Nullable Integer survey(PumpKind kind) {
        return switch (kind) {
            case SUMP_WITH_FLOAT, SEWAGE, CIRCULATOR -> SURVEY_YEARS;
            default -> null;
        };
    }

    private static BigDecimal years(LocalDate from, LocalDate today) {
        return BigDecimal.valueOf(Math.max(0, ChronoUnit.DAYS.between(from, today)))
                .divide(DAYS_A_YEAR, 1, RoundingMode.HALF_UP);
    }

    /** The first day of the opening that runs today at this site, else of the next one; null at a site without any. */
    static @Nullable LocalDate seasonOpensOn(Site site, LocalDate today) {
        Stream<Span> openings = site.windows().stream()
                .filter(window -> window.kind() == WindowKind.OPENING)
                .flatMap(window -> window.spans(today, today.plusDays(DAYS_AHEAD)).stream());
        return openings.map(Span::opensOn).min(Comparator.naturalOrder()).orElse(null);
    }
}
