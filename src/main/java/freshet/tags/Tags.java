package freshet.tags;

import freshet.fleet.Fleet;
import freshet.fleet.FleetPage;
import freshet.fleet.FleetQuery;
import freshet.people.Refused;
import freshet.people.Typed;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to the tags: from a tag to its unit, and from units to the labels that name them. */
@Service
@Transactional(readOnly = true)
public class Tags {

    /** More labels than this are printed in several goes. */
    public static final int MOST_LABELS = FleetQuery.LARGEST_PAGE;

    private static final int MOST_NEAR = 8;

    private final Pumps pumps;
    private final Fleet fleet;

    Tags(Pumps pumps, Fleet fleet) {
        this.pumps = pumps;
        this.fleet = fleet;
    }

    /** Looks for the unit of a tag, typed with or without its check character. */
    public Looked look(String typed) {
        String text = Typed.textOrEmpty(typed);
        TypedTag its = TypedTag.of(text);
        char check = CheckCharacter.of(its.tag());
        Optional<Unit> unit = its.tag().isEmpty() ? Optional.empty() : pumps.unitTagged(its.tag());
        if (unit.isPresent() && !its.contradictsItself()) {
            return new Looked(its.tag(), its.check(), check, unit.get(), List.of());
        }
        Set<String> candidates = NearTags.of(its.tag());
        candidates.add(its.tag());
        candidates.add(text.replaceAll("[\\s./*:]+", "-"));
        List<Looked.Near> near = pumps.unitsTagged(candidates).stream()
                .map(each -> near(each, its))
                .sorted(Comparator.comparing((Looked.Near each) -> !each.fits())
                        .thenComparing(each -> !each.unit().tag().equalsIgnoreCase(its.tag())))
                .limit(MOST_NEAR)
                .toList();
        return new Looked(its.tag(), its.check(), check, null, near);
    }

    private static Looked.Near near(Unit unit, TypedTag typed) {
        char check = CheckCharacter.of(unit.tag());
        return new Looked.Near(unit, check, typed.check() != null && typed.check() == check);
    }

    /** Whether anything in the fleet has these words in its tag, serial, model, owner or place. */
    public boolean somethingHas(String words) {
        return found(new FleetQuery(words, null, null, null, false, null, false, FleetQuery.Sort.TAG, 0, 1)) > 0;
    }

    /** How many units a search finds. */
    public int found(FleetQuery query) {
        return fleet.find(query.page(0, 1)).total();
    }

    /** A label for each unit that a search finds, their codes opening {@code base}. Refuses none, and more than fit in one go. */
    public List<Label> labels(FleetQuery query, String base) {
        FleetPage found = fleet.find(query.page(0, MOST_LABELS));
        if (found.total() == 0) {
            throw Refused.because("text", "tags.labels.none");
        }
        if (found.total() > MOST_LABELS) {
            throw Refused.because("text", "tags.labels.many", found.total(), MOST_LABELS);
        }
        return found.rows().stream()
                .map(row -> Label.of(row.tag(), row.modelName(), row.serial(), base))
                .toList();
    }

    /** A label for each of these tags, in their order and once each. Refuses tags that no unit has or whose check character is wrong. */
    public List<Label> labels(List<String> typed, String base) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        Map<String, Unit> units =
                pumps
                        .unitsTagged(typed.stream()
                                .map(each -> TypedTag.of(each).tag())
                                .toList())
                        .stream()
                        .collect(Collectors.toMap(unit -> unit.tag().toLowerCase(Locale.ROOT), unit -> unit));
        Map<String, Label> labels = new LinkedHashMap<>();
        for (String each : typed) {
            TypedTag its = TypedTag.of(each);
            Unit unit = units.get(its.tag().toLowerCase(Locale.ROOT));
            if (its.contradictsItself()) {
                wrongs.add(Refused.Wrong.at("tags", "tags.labels.check", its.tag(), String.valueOf(its.check())));
            } else if (unit == null) {
                wrongs.add(Refused.Wrong.at("tags", "tags.labels.unknown", its.tag()));
            } else {
                labels.put(unit.tag(), Label.of(unit.tag(), unit.model().name(), unit.serial(), base));
            }
        }
        Refused.ifAny(wrongs);
        if (labels.size() > MOST_LABELS) {
            throw Refused.because("tags", "tags.labels.many", labels.size(), MOST_LABELS);
        }
        return List.copyOf(labels.values());
    }
}
