package freshet.pumps;

import static freshet.people.Refused.Wrong.at;

import freshet.people.NotFound;
import freshet.people.Refused;
import freshet.places.Places;
import freshet.places.Position;
import freshet.places.Site;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Looks up what a unit's papers point to: its place, its customer, its model. */
@Component
class Ground {

    private final Places places;
    private final ModelKeeper models;

    Ground(Places places, ModelKeeper models) {
        this.places = places;
        this.models = models;
    }

    ZoneId zone(Whereabouts at) {
        Site site = site(at);
        return site == null ? ZoneOffset.UTC : site.zone();
    }

    LocalDate today(Whereabouts at, Clock clock) {
        return LocalDate.ofInstant(clock.instant(), zone(at));
    }

    List<Refused.Wrong> wrongs(Whereabouts at) {
        Position position = null;
        if (at.positionId() != null) {
            try {
                position = places.position(at.positionId());
            } catch (NotFound unknown) {
                // said below, at its field
            }
        }
        return UnitChecks.place("", at, site(at), position);
    }

    List<Refused.Wrong> wrongs(UnitDraft draft) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        if (!models.knows(draft.modelId())) {
            wrongs.add(at("modelId", "pumps.model.unknown"));
        }
        Long customerId = draft.customerId();
        if (customerId != null && places.customers().stream().noneMatch(customer -> customer.id() == customerId)) {
            wrongs.add(at("customer", "pumps.customer.unknown"));
        }
        return wrongs;
    }

    /** The name of the place, for the trail. */
    String named(Whereabouts at) {
        Site site = site(at);
        return (site == null ? "" : site.name()) + (at.spot() == null ? "" : ", " + at.spot());
    }

    private @Nullable Site site(Whereabouts at) {
        return places.sites(List.of(at.siteId())).get(at.siteId());
    }
}
