package freshet.places;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.MonthDay;
import java.util.Objects;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** The row of a season window. */
@Entity
@Table(name = "season_window")
class StoredWindow {

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    private @Nullable Long id;

    @Enumerated(EnumType.STRING)
    private WindowKind kind = WindowKind.OPENING;

    private String name = "";

    @JdbcTypeCode(SqlTypes.SMALLINT)
    private int fromMonth;

    @JdbcTypeCode(SqlTypes.SMALLINT)
    private int fromDay;

    @JdbcTypeCode(SqlTypes.SMALLINT)
    private int toMonth;

    @JdbcTypeCode(SqlTypes.SMALLINT)
    private int toDay;

    /** Whether the draft means this window, by its id or else by its kind and name. */
    boolean isMeantBy(WindowDraft draft) {
        return draft.id() == null
                ? kind == draft.kind() && name.equalsIgnoreCase(draft.name())
                : draft.id().equals(id);
    }

    /** Takes what the draft says, and tells whether that is anything new. */
    boolean become(WindowDraft draft) {
        WindowDraft before = drafted();
        kind = draft.kind();
        name = draft.name();
        fromMonth = draft.from().getMonthValue();
        fromDay = draft.from().getDayOfMonth();
        toMonth = draft.to().getMonthValue();
        toDay = draft.to().getDayOfMonth();
        return before == null || !before.equals(drafted());
    }

    private @Nullable WindowDraft drafted() {
        return id == null
                ? null
                : new WindowDraft(id, kind, name, MonthDay.of(fromMonth, fromDay), MonthDay.of(toMonth, toDay));
    }

    Window seen(long siteId) {
        return new Window(
                Objects.requireNonNull(id),
                siteId,
                kind,
                name,
                MonthDay.of(fromMonth, fromDay),
                MonthDay.of(toMonth, toDay));
    }
}
