package freshet.jobs;

import freshet.measures.Quantity;
import freshet.measures.Show;
import freshet.readings.FlowTestDraft.Piece;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.springframework.context.MessageSource;

/** Says what was worked out in a reader's words and units; pages know it as {@code words}. */
record Words(MessageSource messages, Show show, Locale locale) {

    String say(String code, Object... arguments) {
        return messages.getMessage(code, arguments, locale);
    }

    public String check(Check check) {
        return say(check.code(), check.arguments().toArray());
    }

    /** "10.4 ± 0.5 gpm", or what else can be said. */
    public String gives(Gives gives) {
        if (gives.noWater()) {
            return say("jobs.gives.none");
        }
        if (gives.beyondCurve()) {
            return say("jobs.gives.beyond", show.flow(gives.lastM3h()));
        }
        Double uncertainty = gives.uncertaintyM3h();
        if (uncertainty == null) {
            return gives.lowM3h() == 0
                    ? say("jobs.gives.orNone", show.flow(gives.flowM3h()))
                    : say("jobs.gives.orMore", show.flow(gives.flowM3h()), show.flow(gives.lowM3h()));
        }
        return say("jobs.gives", Quantity.FLOW.number(gives.flowM3h(), show.system()), show.flow(uncertainty));
    }

    /** A gain or loss of flow with its sign. */
    public String gain(double flowM3h) {
        String number = show.flow(Math.abs(flowM3h));
        return flowM3h < 0 ? "−" + number : "+" + number;
    }

    /** Minutes of pumping, to the minute; days when they are many. */
    public String minutes(double minutes) {
        double days = minutes / 60 / 24;
        return days > 4 ? say("jobs.days", show.number(days, 1)) : show.minutes(Math.max(1, Math.round(minutes)));
    }

    public String velocity(double velocityMs) {
        return Quantity.VELOCITY.show(velocityMs, show.system());
    }

    /** "28 % to spare", "73 % short", or nothing where no water comes. */
    public String spare(Gives gives, double wantedM3h) {
        double margin = gives.margin(wantedM3h);
        String part = show.percent(Math.abs(margin));
        return gives.noWater() ? "–" : say(margin < 0 ? "jobs.short" : "jobs.spare", part);
    }

    /** "Smooth hose, 80 ft of 1 in". */
    public String piece(LinePiece piece) {
        String kind = say("readings.piece." + piece.kind());
        Piece last = piece.parts().get(piece.parts().size() - 1);
        List<String> words = new ArrayList<>();
        words.add(
                switch (piece.family()) {
                    case HOSE -> say("jobs.piece.hose", kind, show.length(piece.lengthM()), show.bore(piece.boreMm()));
                    case ADAPTER ->
                        say("jobs.piece.adapter", kind, show.bore(piece.fromMm()), show.bore(piece.boreMm()));
                    case FITTING -> say("jobs.piece.fitting", kind, show.bore(piece.boreMm()));
                });
        if (last.hazenWilliamsC() != null) {
            words.add("C " + show.number(last.hazenWilliamsC(), 0));
        }
        if (last.lossCoefficient() != 0) {
            words.add("K " + show.number(last.lossCoefficient(), 2));
        }
        return String.join(", ", words);
    }
}
