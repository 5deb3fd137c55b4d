package freshet.tags;

import freshet.fleet.FleetQuery;
import freshet.fleet.Word;
import freshet.people.Typed;
import freshet.pumps.PumpKind;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Which labels somebody wants, on what: tags typed one by one, or else what a search of the fleet finds. */
record LabelForm(
        @Nullable String tags,
        @Nullable String text,
        @Nullable String kind,
        @Nullable String site,
        @Nullable String customer,
        @Nullable String own,
        @Nullable String word,
        @Nullable String sort,
        @Nullable String sheet,
        @Nullable String start) {

    /** What was typed as tags, one a line or parted by commas. */
    List<String> typedTags() {
        return Arrays.stream(Typed.textOrEmpty(tags).split("[\\r\\n,;]+"))
                .map(String::strip)
                .filter(each -> !each.isEmpty())
                .toList();
    }

    FleetQuery query() {
        return new FleetQuery(
                Typed.text(text),
                choice(PumpKind.class, kind),
                number(site),
                number(customer),
                "true".equals(own),
                choice(Word.class, word),
                false,
                FleetQuery.Sort.SITE.name().equals(sort) ? FleetQuery.Sort.SITE : FleetQuery.Sort.TAG,
                0,
                1);
    }

    LabelSheet sheet(LabelSheet usual) {
        LabelSheet chosen = choice(LabelSheet.class, sheet);
        return chosen == null ? usual : chosen;
    }

    /** The place of the first label on the first sheet, from 1; null when there is no such place. */
    @Nullable
    Integer startOn(LabelSheet sheet) {
        String text = Typed.text(start);
        Long place = text == null ? Long.valueOf(1) : number(text);
        return place != null && place >= 1 && place <= sheet.places() ? Integer.valueOf(place.intValue()) : null;
    }

    private static <E extends Enum<E>> @Nullable E choice(Class<E> type, @Nullable String text) {
        return Arrays.stream(type.getEnumConstants())
                .filter(each -> each.name().equals(text))
                .findFirst()
                .orElse(null);
    }

    private static @Nullable Long number(@Nullable String text) {
        return text != null && text.matches("\\d{1,9}") ? Long.valueOf(text) : null;
    }
}
