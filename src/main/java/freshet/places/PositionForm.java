package freshet.places;

import freshet.people.Typed;
import org.jspecify.annotations.Nullable;

/** What was typed about a position. */
record PositionForm(
        @Nullable String name,
        @Nullable PositionKind kind,
        @Nullable String note,
        @Nullable Integer version) {

    static PositionForm of(Position position) {
        return new PositionForm(position.name(), position.kind(), position.note(), position.version());
    }

    PositionDraft draft(long siteId) {
        return new PositionDraft(
                siteId, Typed.textOrEmpty(name), kind == null ? PositionKind.OTHER : kind, Typed.text(note));
    }
}
