package freshet.api;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * A case of the statistics file as it is asked here: the calculation, the request, and for each expected number its place in the
 * answer (JSON pointers from the one to the other).
 */
record StatisticsCase(String calculation, Object request, Map<String, String> places) {

    /** One process for several units is worked out by the room of reliability, but not offered to programs. */
    static final Set<String> BEYOND_THE_INTERFACE = Set.of("pl-fleet-four-pumps");

    /** The file's words for the interface's. */
    static final Map<String, String> WORDS =
            Map.of("ok", "OK", "not_declining", "NOT_DECLINING", "age_replacement", "REPLACE_AT_AGE");

    static List<StatisticsCase> of(JsonNode one) {
        JsonNode in = one.get("input");
        JsonNode expected = one.get("expected");
        return switch (one.get("kind").stringValue()) {
            case "linear_regression" -> List.of(regression(in, expected));
            case "weighted_regression" -> weighted(in, expected);
            case "time_to_threshold" -> List.of(threshold(in));
            case "theil_sen" ->
                List.of(new StatisticsCase(
                        "capacity-trend",
                        trend(in, null, 1),
                        places(
                                "/robust",
                                "slope=slopePerHour intercept_median_residual=intercept ci_normal=slopeInterval")));
            case "kaplan_meier" -> List.of(productLimit(in, expected));
            case "weibull_mle" ->
                List.of(new StatisticsCase(
                        "lives",
                        lives(in),
                        places(
                                "/weibull",
                                "shape=shape scale=scaleHours se_shape=seShape se_scale=seScale shape_ci=shapeInterval"
                                        + " scale_ci=scaleInterval b10=b10Hours b10_ci=b10Interval mean_life=meanHours"
                                        + " loglik=logLikelihood")));
            case "exponential_mtbf" -> List.of(mtbf(in));
            case "mean_cumulative_function" -> List.of(recurrence(in, expected));
            case "power_law_nhpp" -> List.of(failureTrend(in));
            case "age_replacement" ->
                List.of(new StatisticsCase(
                        "replacement-age",
                        Map.of(
                                "shape", in.get("shape"),
                                "scaleHours", in.get("scale"),
                                "plannedCost", in.get("cp"),
                                "failureCost", in.get("cf")),
                        places(
                                "",
                                "policy=policy T_opt=optimumHours cost_rate_opt=costRate"
                                        + " cost_rate_run_to_failure=costRateRunToFailure"
                                        + " saving_fraction=savingFraction")));
            case "poisson_spares" -> spares(in);
            case "eb_shrinkage" -> List.of(pooled(in));
            case "maintenance_indicators" -> List.of(indicators(in));
            default -> throw new IllegalArgumentException("no kind " + one.get("kind"));
        };
    }

    /** Pairs such as "slope=slopePerHour", the second below a pointer of the answer. */
    private static Map<String, String> places(String below, String pairs) {
        Map<String, String> places = new LinkedHashMap<>();
        for (String pair : pairs.split(" ")) {
            String[] names = pair.split("=");
            places.put("/" + names[0], below + "/" + names[1]);
        }
        return places;
    }

    private static void rows(Map<String, String> places, JsonNode rows, String from, String to, String pairs) {
        for (int i = 0; i < rows.size(); i++) {
            for (String pair : pairs.split(" ")) {
                String[] names = pair.split("=");
                places.put(from + "/" + i + "/" + names[0], to + "/" + i + "/" + names[1]);
            }
        }
    }

    private static StatisticsCase regression(JsonNode in, JsonNode expected) {
        Map<String, String> places = new LinkedHashMap<>();
        expected.propertyNames().stream()
                .filter(LINE::containsKey)
                .forEach(name -> places.put("/" + name, LINE.get(name)));
        rows(places, expected.path("predictions"), "/predictions", "/at", BANDS);
        return new StatisticsCase("capacity-trend", trend(in, null, 1), places);
    }

    private static final Map<String, String> LINE = Map.of(
            "intercept", "/intercept",
            "slope", "/slopePerHour",
            "se_intercept", "/seIntercept",
            "se_slope", "/seSlope",
            "residual_sd", "/residualSd",
            "df", "/df",
            "r_squared", "/rSquared",
            "slope_ci", "/slopeInterval");

    private static final String BANDS = "x0=runHours fit=fit se_fit=seFit ci_lower=meanLower ci_upper=meanUpper"
            + " pi_lower=readingLower pi_upper=readingUpper";

    /** A further reading has weight 1 here: for one of weight w0 all weights are divided by it. */
    private static List<StatisticsCase> weighted(JsonNode in, JsonNode expected) {
        List<StatisticsCase> cases = new ArrayList<>();
        cases.add(new StatisticsCase(
                "capacity-trend",
                trend(in, in.get("w"), 1),
                regression(in, expected).places()));
        cases.get(0).places().keySet().removeIf(place -> place.startsWith("/predictions"));
        for (int i = 0; i < in.get("x0").size(); i++) {
            Map<String, String> places = new LinkedHashMap<>();
            for (String pair : BANDS.split(" ")) {
                String[] names = pair.split("=");
                places.put("/predictions/" + i + "/" + names[0], "/at/" + i + "/" + names[1]);
            }
            Object request = trend(in, in.get("w"), in.get("w0").get(i).doubleValue());
            cases.add(new StatisticsCase("capacity-trend", request, places));
        }
        return cases;
    }

    private static Map<String, Object> trend(JsonNode in, @Nullable JsonNode weights, double unitWeight) {
        Map<String, Object> request = new LinkedHashMap<>();
        request.put(
                "readings",
                IntStream.range(0, in.get("x").size())
                        .mapToObj(i -> {
                            Map<String, Object> reading = new LinkedHashMap<>();
                            reading.put("runHours", in.get("x").get(i));
                            reading.put("remainingFraction", in.get("y").get(i));
                            if (weights != null) {
                                double weight = weights.get(i).doubleValue() / unitWeight;
                                reading.put("standardUncertainty", 1 / Math.sqrt(weight));
                            }
                            return reading;
                        })
                        .toList());
        request.put("threshold", in.has("threshold") ? in.get("threshold") : 0.5);
        request.put("nowHours", in.has("x_now") ? in.get("x_now") : 0);
        if (in.has("level")) {
            request.put("level", in.get("level"));
        }
        if (in.has("x0")) {
            request.put("atHours", in.get("x0"));
        }
        return request;
    }

    private static StatisticsCase threshold(JsonNode in) {
        Map<String, String> places = places(
                "/hoursToThreshold",
                "status=status estimate=estimate lower_one_sided=lowerOneSided ci_two_sided=interval"
                        + " lower_one_sided_next_reading=lowerOneSidedNextReading remaining_estimate=remainingEstimate"
                        + " remaining_lower=remainingLower");
        places.putAll(places("", "slope=slopePerHour df=df"));
        return new StatisticsCase("capacity-trend", trend(in, null, 1), places);
    }

    private static Map<String, Object> lives(JsonNode in) {
        return Map.of(
                "level",
                in.get("level"),
                "lives",
                IntStream.range(0, in.get("time").size())
                        .mapToObj(i -> Map.of(
                                "hours",
                                in.get("time").get(i),
                                "failed",
                                in.get("event").get(i).intValue() == 1))
                        .toList());
    }

    private static StatisticsCase productLimit(JsonNode in, JsonNode expected) {
        Map<String, String> places =
                places("", "n=n events=failures median=medianHours median_ci_loglog=medianInterval");
        rows(
                places,
                expected.get("table"),
                "/table",
                "/productLimit",
                "t=hours n_risk=atRisk n_event=failures surv=survival std_err=standardError ci_loglog/0=lower"
                        + " ci_loglog/1=upper");
        return new StatisticsCase("lives", lives(in), places);
    }

    private static StatisticsCase mtbf(JsonNode in) {
        return new StatisticsCase(
                "mtbf",
                Map.of(
                        "totalHours", in.get("total_time"),
                        "failures", in.get("failures"),
                        "termination", in.get("termination").stringValue().toUpperCase(),
                        "level", in.get("level")),
                places(
                        "",
                        "mtbf=mtbfHours lower_one_sided=lowerOneSided upper_one_sided=upperOneSided"
                                + " ci_two_sided=interval"));
    }

    private static StatisticsCase recurrence(JsonNode in, JsonNode expected) {
        Map<String, String> places = places("", "units=units events=events");
        rows(
                places,
                expected.get("table"),
                "/table",
                "/table",
                "t=hours at_risk=atRisk events=events mcf=meanCumulative std_err=standardError ci_log/0=lower"
                        + " ci_log/1=upper");
        List<Map<String, JsonNode>> units = in.get("units")
                .valueStream()
                .map(unit -> Map.of("eventHours", unit.get("events"), "endHours", unit.get("end")))
                .toList();
        return new StatisticsCase("recurrence", Map.of("units", units, "level", in.get("level")), places);
    }

    private static StatisticsCase failureTrend(JsonNode in) {
        return new StatisticsCase(
                "failure-trend",
                Map.of(
                        "eventHours", in.get("event_times"),
                        "endHours", in.get("T"),
                        "termination", in.get("termination").stringValue().toUpperCase(),
                        "level", in.get("level")),
                places(
                        "",
                        "beta_mle=shape lambda_mle=scale beta_unbiased=shapeUnbiased intensity_at_T=intensityAtEnd"
                                + " mtbf_at_T=mtbfAtEnd beta_ci=shapeInterval chi2_trend=chiSquare chi2_df=chiSquareDf"
                                + " laplace_u=laplace"));
    }

    private static List<StatisticsCase> spares(JsonNode in) {
        return IntStream.range(0, in.get("rows").size())
                .mapToObj(i -> new StatisticsCase(
                        "spares",
                        Map.of(
                                "meanDemand", in.get("rows").get(i).get("mean_demand"),
                                "serviceLevel", in.get("rows").get(i).get("service_level")),
                        places("", "stock/%d=stock prob_demand_le_stock/%d=probabilityOfNoShortage".formatted(i, i))))
                .toList();
    }

    private static StatisticsCase pooled(JsonNode in) {
        Map<String, String> places = places("", "DL/tau2=betweenUnitVariance DL/mu=meanSlope DL/se_mu=seMeanSlope");
        for (int i = 0; i < in.get("y").size(); i++) {
            places.put("/DL/shrink_factor/" + i, "/units/" + i + "/weightOfMean");
            places.put("/DL/shrunk/" + i, "/units/" + i + "/slopePerHour");
            places.put("/DL/se_shrunk_with_mu/" + i, "/units/" + i + "/standardError");
        }
        List<Map<String, Double>> slopes = IntStream.range(0, in.get("y").size())
                .mapToObj(i -> Map.of(
                        "slopePerHour",
                        in.get("y").get(i).doubleValue(),
                        "standardError",
                        Math.sqrt(in.get("v").get(i).doubleValue())))
                .toList();
        return new StatisticsCase("pooled-wear", Map.of("slopes", slopes), places);
    }

    private static StatisticsCase indicators(JsonNode in) {
        List<Map<String, Object>> units = in.get("units")
                .valueStream()
                .map(unit -> Map.<String, Object>of(
                        "requiredHours", unit.get("required_hours"),
                        "operatingHours", unit.get("operating_hours"),
                        "downs",
                                unit.get("downs")
                                        .valueStream()
                                        .map(StatisticsCase::down)
                                        .toList()))
                .toList();
        return new StatisticsCase(
                "indicators",
                Map.of("units", units),
                places(
                        "",
                        "failures=failures mtbf_operating=mtbfOperatingHours metbf_calendar=metbfCalendarHours"
                                + " mean_down_time_failures=meanDownHours mrt_without_detection=meanRepairHours"
                                + " mean_active_repair_time=meanActiveRepairHours"
                                + " availability_time_based=availabilityTimeBased"
                                + " availability_restoration=availabilityRestoration"
                                + " mtbf_lower_95_one_sided=mtbfLowerOneSided95"));
    }

    private static Map<String, Object> down(JsonNode in) {
        Map<String, Object> down = new LinkedHashMap<>();
        down.put("type", in.get("type").stringValue().toUpperCase());
        down.put("downHours", in.get("down_hours"));
        if (in.has("detection_hours")) {
            down.put("detectionHours", in.get("detection_hours"));
            down.put("activeRepairHours", in.get("active_repair_hours"));
        }
        return down;
    }
}
