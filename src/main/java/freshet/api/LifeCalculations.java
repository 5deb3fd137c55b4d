package freshet.api;

import freshet.reliability.Lives;
import freshet.reliability.Mtbf;
import freshet.reliability.ReplacementAge;
import freshet.reliability.Survival;
import freshet.reliability.Termination;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The calculations of lives, as they are asked. */
final class LifeCalculations {

    private LifeCalculations() {}

    /** One life, ended by failure or still running. */
    record OneLife(
            @Asked(value = "age at failure, or so far", unit = "h", from = 0, to = Shapes.LONGEST_H)
            double hours,

            @Asked("whether it ended by failure") boolean failed,

            @Asked(value = "age at which it came under watch, below hours", unit = "h", from = 0, to = Shapes.LONGEST_H)
            @Nullable
            Double entryHours) {}

    record LivesRequest(
            @Asked(value = "lives of like parts", fewest = 1, most = Lives.MOST_LIVES)
            List<OneLife> lives,

            @Asked(
                    value = Shapes.LEVEL,
                    from = Shapes.LEAST_LEVEL,
                    to = Shapes.GREATEST_LEVEL,
                    usual = Shapes.USUAL_LEVEL)
            double level)
            implements Calculation {

        @Override
        public Lives answer() {
            return Lives.of(
                    lives.stream()
                            .map(in -> new Lives.Life(in.hours, in.failed, in.entryHours))
                            .toList(),
                    level);
        }
    }

    record SurvivalRequest(
            @Asked(value = "shape of the Weibull law", from = 0.01, to = 1e9)
            double shape,

            @Asked(
                    value = "age by which 63.2 % have failed",
                    unit = "h",
                    from = Shapes.SHORTEST_H,
                    to = Shapes.LONGEST_H)
            double scaleHours,

            @Asked(value = "age reached", unit = "h", from = 0, to = Shapes.LONGEST_H)
            double ageHours,

            @Asked(value = "hours to come", unit = "h", from = 0, to = Shapes.LONGEST_H)
            double missionHours)
            implements Calculation {

        @Override
        public Survival answer() {
            return Survival.of(shape, scaleHours, ageHours, missionHours);
        }
    }

    record MtbfRequest(
            @Asked(value = "hours of all units together", unit = "h", from = Shapes.SHORTEST_H, to = 1e12)
            double totalHours,

            @Asked(value = "failures in them, 1 at least when a failure ended the record", from = 0, to = 1e6)
            int failures,

            @Asked("what ended the record") Termination termination,

            @Asked(
                    value = Shapes.LEVEL,
                    from = Shapes.LEAST_LEVEL,
                    to = Shapes.GREATEST_LEVEL,
                    usual = Shapes.USUAL_LEVEL)
            double level)
            implements Calculation {

        @Override
        public Mtbf answer() {
            return Mtbf.of(totalHours, failures, termination, level);
        }
    }

    record ReplacementAgeRequest(
            @Asked(value = "shape of the Weibull law", from = 0.01, to = 1e9)
            double shape,

            @Asked(
                    value = "age by which 63.2 % have failed",
                    unit = "h",
                    from = Shapes.SHORTEST_H,
                    to = Shapes.LONGEST_H)
            double scaleHours,

            @Asked(value = "cost of a renewal in time, in any money", from = 1e-6, to = 1e12)
            double plannedCost,

            @Asked(value = "whole cost of one after a failure, in the same money", from = 1e-6, to = 1e12)
            double failureCost)
            implements Calculation {

        @Override
        public ReplacementAge answer() {
            return ReplacementAge.of(shape, scaleHours, plannedCost, failureCost);
        }
    }
}
