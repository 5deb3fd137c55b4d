package freshet.pumps;

import static freshet.people.Refused.Wrong.at;

import freshet.people.NotFound;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.places.Intake;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.orm.ObjectOptimisticLockingFailureException;
import org.springframework.stereotype.Component;

/** Keeps models. Runs in the door's transaction. */
@Component
class ModelKeeper {

    private final ModelRepository models;
    private final JdbcClient jdbc;

    ModelKeeper(ModelRepository models, JdbcClient jdbc) {
        this.models = models;
        this.jdbc = jdbc;
    }

    StoredModel stored(long id) {
        return models.findById(id).orElseThrow(() -> new NotFound("model", id));
    }

    List<Model> all() {
        return models.inOrder().stream().map(StoredModel::seen).toList();
    }

    Optional<Model> named(String name) {
        return models.named(name.strip()).map(StoredModel::seen);
    }

    boolean knows(long id) {
        return models.existsById(id);
    }

    Model keep(StoredModel model, ModelDraft draft) {
        Refused.ifAny(ModelChecks.wrongs(draft));
        model.become(draft);
        return unique(
                "pump_model_name",
                "name",
                "pumps.model.nameTaken",
                draft.name(),
                () -> models.saveAndFlush(model).seen());
    }

    /** Takes in models, and adds to {@code toPlan} the units that other kinds or curves concern. */
    Intake takeIn(List<ModelDraft> drafts, Set<Long> toPlan) {
        check(drafts);
        Map<String, StoredModel> known = new HashMap<>();
        models.inOrder().forEach(model -> known.put(key(model.seen().name()), model));
        int added = 0;
        int changed = 0;
        for (ModelDraft draft : drafts) {
            StoredModel model = known.get(key(draft.name()));
            if (model == null) {
                keep(new StoredModel(), draft);
                added++;
            } else if (!model.isLike(draft)) {
                Model before = model.seen();
                toPlan.addAll(unitsToPlanAgain(before, keep(model, draft)));
                changed++;
            }
        }
        return new Intake(added, changed, drafts.size() - added - changed);
    }

    private static void check(List<ModelDraft> drafts) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (int row = 0; row < drafts.size(); row++) {
            String prefix = "rows[" + row + "].";
            for (Refused.Wrong wrong : ModelChecks.wrongs(drafts.get(row))) {
                wrongs.add(new Refused.Wrong(prefix + wrong.field(), wrong.code(), wrong.arguments()));
            }
            if (!names.add(key(drafts.get(row).name()))) {
                wrongs.add(at(prefix + "name", "pumps.rowTwice", drafts.get(row).name()));
            }
        }
        Refused.ifAny(wrongs);
    }

    private static String key(String name) {
        return name.toLowerCase(Locale.ROOT);
    }

    /** Units in care of a model whose kind, float, curve or limits are other than before. */
    Collection<Long> unitsToPlanAgain(Model before, Model after) {
        boolean same = before.kind() == after.kind()
                && before.drive() == after.drive()
                && before.hasFloat() == after.hasFloat()
                && before.curve().equals(after.curve())
                && before.curveUncertainty() == after.curveUncertainty();
        return same
                ? List.of()
                : jdbc.sql("select id from pump_unit where model_id = ? and retired_on is null")
                        .param(after.id())
                        .query(Long.class)
                        .list();
    }

    /** Saves, and says it at the field when the database's unique index says no. */
    static <T> T unique(String index, String field, String code, String name, Supplier<T> saving) {
        try {
            return saving.get();
        } catch (ObjectOptimisticLockingFailureException meanwhile) {
            throw new Stale(index, name);
        } catch (DataIntegrityViolationException violation) {
            if (String.valueOf(violation.getMostSpecificCause().getMessage()).contains("\"" + index + "\"")) {
                throw Refused.because(field, code, name);
            }
            throw violation;
        }
    }
}
