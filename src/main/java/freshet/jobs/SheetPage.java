package freshet.jobs;

import freshet.hydraulics.Curve;
import freshet.hydraulics.DutyPoint;
import freshet.hydraulics.Line;
import freshet.hydraulics.LineLoss;
import freshet.measures.Show;
import freshet.pumps.CurveSheet;
import freshet.readings.Part;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the page of a job shows.
 *
 * @param news the answer as one sentence
 * @param facts what was asked, for those who read the sheet on paper
 * @param sheet null when no pump was named
 * @param atM3h the flow at which {@code losses} hold: the pump's, or the wanted one without a pump
 * @param bar where the head goes at that flow
 */
record SheetPage(
        Job job,
        String news,
        List<Fact> facts,
        @Nullable JobSheet sheet,
        List<Check> checks,
        @Nullable CurveSheet curve,
        double atM3h,
        LineLoss losses,
        double neededM,
        List<Part> bar,
        List<BoreRow> bores,
        UnitMatches units,
        JobForm form) {

    private static final double MOST_OF_CURVE = 1.6;

    /** One fact of the job: the key of its label, and what it is. */
    record Fact(String label, String value) {}

    /** The same job in one bore, and where its sheet is. */
    record BoreRow(JobSheet.OtherBore bore, String address) {}

    static SheetPage of(Job job, @Nullable Chosen pump, JobForm form, UnitMatches units, Words words) {
        Show show = words.show();
        JobSheet sheet = pump == null ? null : JobSheet.of(job, pump);
        Line line = job.line().behind(pump == null ? null : pump.outletMm());
        LineLoss needed = LineLoss.of(line, job.wantedM3h());
        LineLoss losses = sheet == null ? needed : sheet.losses();
        return new SheetPage(
                job,
                sheet == null ? noPump(units, words) : news(sheet, words),
                facts(job, pump, words),
                sheet,
                sheet == null
                        ? List.of()
                        : Checks.of(sheet, show).stream()
                                .sorted(Comparator.comparing(Check::looks))
                                .toList(),
                sheet == null ? null : curve(sheet, line, words),
                sheet == null ? job.wantedM3h() : sheet.workingM3h(),
                losses,
                needed.headM(),
                HeadParts.of(job.line(), losses, null, words),
                sheet == null
                        ? List.of()
                        : sheet.bores().stream()
                                .map(bore -> new BoreRow(
                                        bore,
                                        form.throughout(bore.boreMm(), show.system())
                                                .address()))
                                .toList(),
                units,
                form);
    }

    /** Where the sheet of the same job with this unit is. */
    public String sheetOf(UnitMatch match) {
        return form.withUnit(match.unit().tag()).address();
    }

    private static String noPump(UnitMatches units, Words words) {
        return words.say("jobs.news.units", units.able(), units.total());
    }

    private static String news(JobSheet sheet, Words words) {
        Show show = words.show();
        String wanted = show.flow(sheet.job().wantedM3h());
        return switch (sheet.verdict()) {
            case UNKNOWN -> words.say("jobs.news.unknown", sheet.pump().name(), words.gives(sheet.rated()), wanted);
            case NO_WATER ->
                words.say(
                        "jobs.news.noWater",
                        show.head(sheet.job().line().liftM()),
                        show.head(sheet.pump().curves().curve().shutOffHeadM()));
            default -> words.say("jobs.news", words.gives(sheet.gives()), wanted);
        };
    }

    private static List<Fact> facts(Job job, @Nullable Chosen pump, Words words) {
        Show show = words.show();
        List<Fact> facts = new ArrayList<>();
        if (pump != null) {
            String model = pump.model().name();
            facts.add(new Fact(
                    "jobs.pump", pump.unit() == null ? model : pump.unit().tag() + ", " + model));
        }
        facts.add(new Fact(
                "jobs.fact.wanted", show.flow(job.wantedM3h()) + " (" + show.flowOther(job.wantedM3h()) + ")"));
        double lift = job.line().liftM();
        facts.add(new Fact("jobs.fact.lift", show.head(lift) + " (" + show.headOther(lift) + ")"));
        List<LinePiece> pieces = job.line().pieces();
        for (int i = 0; i < pieces.size(); i++) {
            facts.add(new Fact(i == 0 ? "jobs.fact.line" : "jobs.fact.then", words.piece(pieces.get(i))));
        }
        if (job.volumeL() != null) {
            facts.add(new Fact("jobs.fact.volume", show.volume(job.volumeL())));
        }
        if (job.depthM() != null) {
            facts.add(new Fact("jobs.fact.depth", show.head(job.depthM())));
        }
        if (job.inflowM3h() > 0) {
            facts.add(new Fact("jobs.fact.inflow", show.flow(job.inflowM3h())));
        }
        facts.add(new Fact("jobs.fact.water", show.temperature(job.line().waterC())));
        if (job.solidsMm() != null) {
            facts.add(new Fact("jobs.fact.solids", show.bore(job.solidsMm())));
        }
        return facts;
    }

    private static CurveSheet curve(JobSheet sheet, Line line, Words words) {
        Curve rated = sheet.pump().model().curve();
        double flow = rated.lastFlowM3h();
        double head = rated.shutOffHeadM();
        CurveSheet drawn = new CurveSheet(
                words.show().system(),
                Math.min(MOST_OF_CURVE * flow, Math.max(flow, sheet.job().wantedM3h())),
                Math.min(MOST_OF_CURVE * head, Math.max(head, line.liftM())));
        drawn.rated(rated, words.say("jobs.curve.rated"));
        if (sheet.pump().own() != null) {
            Curves own = sheet.pump().curves();
            drawn.own(
                    own.curve(),
                    own.lower(),
                    own.upper(),
                    words.say("jobs.curve.own", sheet.pump().name()));
        }
        drawn.job(at -> LineLoss.of(line, at).headM(), words.say("jobs.curve.job"));
        DutyPoint duty = sheet.gives().duty();
        if (duty.status() == DutyPoint.Status.OK && duty.flowM3h() != null && duty.headM() != null) {
            drawn.duty(duty.flowM3h(), duty.headM(), words.show().flow(duty.flowM3h()));
        }
        return drawn;
    }
}
