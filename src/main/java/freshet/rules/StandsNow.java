package freshet.rules;

import freshet.people.Difference;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Says in words what stands now where it differs from what was typed about a rule. */
final class StandsNow {

    private static final Set<String> OF_THE_PRESS =
            Set.of("rules.field.press", "rules.field.addKind", "rules.field.ownJob");
    private static final Map<String, String> OTHER_ROOMS = Map.of(
            "rules.pumpKind.", "pumps.pumpKind.",
            "rules.windowKind.", "places.windowKind.",
            "rules.month.", "places.month.",
            "rules.happeningKind.", "happenings.kind.");

    private StandsNow() {}

    static List<Difference> beside(RuleForm typed, RuleForm now, String checklist) {
        return Difference.between("rules.field", typed, now, Map.of("checklistId", checklist)).stream()
                .filter(each -> !OF_THE_PRESS.contains(each.label()))
                .map(StandsNow::inWords)
                .toList();
    }

    /** What is chosen among words is said in them, those of other rooms too. */
    private static Difference inWords(Difference each) {
        String key = each.nowKey();
        for (Map.Entry<String, String> room : OTHER_ROOMS.entrySet()) {
            if (key != null && key.startsWith(room.getKey())) {
                key = room.getValue() + key.substring(room.getKey().length());
            }
        }
        switch (each.label()) {
            case "rules.field.fixed" -> key = "rules.fixed." + (key != null);
            case "rules.field.followsPosition" -> key = "rules.follows." + (key != null);
            case "rules.field.job" -> key = DefaultRules.knowsJob(each.now()) ? "rules.job." + each.now() : null;
            default -> {}
        }
        return new Difference(each.label(), each.row(), each.now(), key);
    }
}
