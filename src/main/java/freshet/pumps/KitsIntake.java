package freshet.pumps;

import freshet.people.NotFound;
import freshet.people.Refused;
import freshet.places.Intake;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Takes in what goes with many units at once. Runs in the door's transaction. */
@Component
class KitsIntake {

    private final JdbcClient jdbc;
    private final EntityManager entities;
    private final UnitRows rows;

    KitsIntake(JdbcClient jdbc, EntityManager entities, UnitRows rows) {
        this.jdbc = jdbc;
        this.entities = entities;
        this.rows = rows;
    }

    private record Piece(long unitId, int ordinal, KitItem item) {}

    Intake takeIn(List<Kit> kits) {
        check(kits);
        entities.flush();
        Map<Long, Unit> units = rows.units(kits.stream().map(Kit::unitId).toList()).stream()
                .collect(Collectors.toMap(Unit::id, Function.identity()));
        List<Kit> others = kits.stream()
                .filter(kit -> !unit(units, kit).kit().equals(kit.items()))
                .toList();
        int added = (int)
                others.stream().filter(kit -> unit(units, kit).kit().isEmpty()).count();
        replace(others);
        entities.clear();
        return new Intake(added, others.size() - added, kits.size() - others.size());
    }

    private static Unit unit(Map<Long, Unit> units, Kit kit) {
        Unit unit = units.get(kit.unitId());
        if (unit == null) {
            throw new NotFound("unit", kit.unitId());
        }
        return unit;
    }

    private void replace(List<Kit> kits) {
        Long[] unitIds = kits.stream().map(Kit::unitId).toArray(Long[]::new);
        jdbc.sql("delete from kit_item where unit_id = any(:units)")
                .param("units", unitIds)
                .update();
        jdbc.sql("update pump_unit set version = version + 1 where id = any(:units)")
                .param("units", unitIds)
                .update();
        List<Piece> pieces = new ArrayList<>();
        for (Kit kit : kits) {
            for (int at = 0; at < kit.items().size(); at++) {
                pieces.add(new Piece(kit.unitId(), at, kit.items().get(at)));
            }
        }
        jdbc.sql("""
                        insert into kit_item (unit_id, ordinal, kind, description, bore_mm, outlet_bore_mm, length_m, quantity)
                        select * from unnest(:units::bigint[], :ordinals::integer[], :kinds::text[], :descriptions::text[],
                            :bores::double precision[], :outlets::double precision[], :lengths::double precision[],
                            :quantities::integer[])""")
                .param("units", pieces.stream().map(Piece::unitId).toArray(Long[]::new))
                .param("ordinals", pieces.stream().map(Piece::ordinal).toArray(Integer[]::new))
                .param(
                        "kinds",
                        pieces.stream().map(piece -> piece.item().kind().name()).toArray(String[]::new))
                .param(
                        "descriptions",
                        pieces.stream().map(piece -> piece.item().description()).toArray(String[]::new))
                .param("bores", sizes(pieces, KitItem::boreMm))
                .param("outlets", sizes(pieces, KitItem::outletBoreMm))
                .param("lengths", sizes(pieces, KitItem::lengthM))
                .param(
                        "quantities",
                        pieces.stream().map(piece -> piece.item().quantity()).toArray(Integer[]::new))
                .update();
    }

    private static @Nullable Double[] sizes(List<Piece> pieces, Function<KitItem, @Nullable Double> of) {
        return pieces.stream().map(piece -> of.apply(piece.item())).toArray(Double[]::new);
    }

    private static void check(List<Kit> kits) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        Set<Long> units = new HashSet<>();
        for (int row = 0; row < kits.size(); row++) {
            if (!units.add(kits.get(row).unitId())) {
                throw new IllegalArgumentException(
                        "two kits for unit " + kits.get(row).unitId());
            }
            for (Refused.Wrong wrong : UnitChecks.kit(kits.get(row).items())) {
                wrongs.add(new Refused.Wrong("rows[" + row + "]." + wrong.field(), wrong.code(), wrong.arguments()));
            }
        }
        Refused.ifAny(wrongs);
    }
}
