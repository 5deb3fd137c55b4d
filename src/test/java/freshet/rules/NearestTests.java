package freshet.rules;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.pumps.PumpKind;
import java.time.Period;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class NearestTests {

    private static CareRule rule(long id, String job, Scope scope, boolean active) {
        return new CareRule(
                id,
                "own-" + id,
                job,
                job + " " + id,
                scope,
                List.of(new Trigger.Calendar(Period.ofMonths(1))),
                1,
                false,
                false,
                14,
                0,
                null,
                null,
                false,
                Applies.ALWAYS,
                Set.of(),
                active,
                null,
                0);
    }

    private static boolean fits(
            Scope scope, long unitId, @Nullable Long positionId, long siteId, long modelId, PumpKind kind) {
        if (scope instanceof Scope.OfUnit unit) {
            return unit.unitId() == unitId;
        }
        if (scope instanceof Scope.InPosition position) {
            return positionId != null
                    && position.positionId() == positionId
                    && (position.kind() == null || position.kind() == kind);
        }
        if (scope instanceof Scope.AtSite site) {
            return site.siteId() == siteId && (site.kind() == null || site.kind() == kind);
        }
        if (scope instanceof Scope.OfModel model) {
            return model.modelId() == modelId;
        }
        return scope instanceof Scope.Every || ((Scope.OfKind) scope).kind() == kind;
    }

    private static Scope scope(Random random) {
        PumpKind kind = PumpKind.values()[random.nextInt(3)];
        PumpKind perhaps = random.nextBoolean() ? kind : null;
        return switch (random.nextInt(6)) {
            case 0 -> new Scope.Every();
            case 1 -> new Scope.OfKind(kind);
            case 2 -> new Scope.OfModel(1 + random.nextInt(3));
            case 3 -> new Scope.AtSite(1 + random.nextInt(3), perhaps);
            case 4 -> new Scope.InPosition(1 + random.nextInt(3), perhaps);
            default -> new Scope.OfUnit(1 + random.nextInt(3));
        };
    }

    @Test
    void letsTheUnitsOwnRuleHoldAndNamesThoseItOverrules() {
        CareRule every = rule(1, "engine-oil", new Scope.Every(), true);
        CareRule kind = rule(2, "engine-oil", new Scope.OfKind(PumpKind.ENGINE_TRASH), true);
        CareRule own = rule(3, "engine-oil", new Scope.OfUnit(7), true);
        CareRule newer = rule(4, "engine-oil", new Scope.OfKind(PumpKind.ENGINE_TRASH), true);
        CareRule resting = rule(5, "engine-oil", new Scope.OfUnit(7), false);

        Nearest nearest = new Nearest(List.of(every, kind, own, newer, resting));

        assertThat(nearest.of(7, null, 1, 1, PumpKind.ENGINE_TRASH))
                .containsExactly(new Applied(own, List.of(newer, kind, every)));
        assertThat(nearest.of(8, null, 1, 1, PumpKind.ENGINE_TRASH))
                .containsExactly(new Applied(newer, List.of(kind, every)));
        assertThat(nearest.of(8, null, 1, 1, PumpKind.CIRCULATOR)).containsExactly(new Applied(every, List.of()));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void holdsOneRuleAJobWhateverTheOrderAndNoneNearerIsLeftOut(long seed) {
        Random random = new Random(seed);
        List<CareRule> rules = new ArrayList<>();
        for (int id = 1; id <= 60; id++) {
            rules.add(rule(id, "job-" + random.nextInt(4), scope(random), random.nextInt(5) > 0));
        }
        long unit = 1 + random.nextInt(3);
        Long position = random.nextBoolean() ? Long.valueOf(1 + random.nextInt(3)) : null;
        PumpKind kind = PumpKind.values()[random.nextInt(3)];

        List<Applied> applied = new Nearest(rules).of(unit, position, 2, 3, kind);

        List<CareRule> fitting = rules.stream()
                .filter(CareRule::active)
                .filter(rule -> fits(rule.scope(), unit, position, 2, 3, kind))
                .toList();
        List<CareRule> told = new ArrayList<>();
        applied.forEach(each -> {
            told.add(each.rule());
            told.addAll(each.overruled());
            assertThat(each.overruled()).allSatisfy(other -> {
                assertThat(other.job()).isEqualTo(each.rule().job());
                int nearer = Integer.compare(
                        each.rule().scope().nearness(), other.scope().nearness());
                assertThat(nearer > 0 || nearer == 0 && each.rule().id() > other.id())
                        .isTrue();
            });
        });
        assertThat(told).containsExactlyInAnyOrderElementsOf(fitting);
        assertThat(applied).extracting(each -> each.rule().job()).doesNotHaveDuplicates();
        Collections.shuffle(rules, random);
        assertThat(new Nearest(rules).of(unit, position, 2, 3, kind)).isEqualTo(applied);
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 200);
    }
}
