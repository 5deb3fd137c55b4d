package freshet.notices;

import freshet.care.Care;
import freshet.care.Task;
import freshet.fleet.Fleet;
import freshet.fleet.FleetPage;
import freshet.fleet.FleetQuery;
import freshet.fleet.FleetRow;
import freshet.fleet.Word;
import freshet.measures.Show;
import freshet.notices.Letter.Chapter;
import freshet.notices.Letter.Item;
import freshet.notices.Letter.Part;
import freshet.phrases.Phrases;
import freshet.places.Site;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** What is to be said of one place: late, due soon, and not ready with its reasons. */
@Component
class SiteNews {

    /** As far ahead as the first page looks. */
    private static final int DAYS = 14;
    /** So many lines of each kind, then how many more there are. */
    private static final int LINES = 20;

    private final Care care;
    private final Fleet fleet;
    private final OwnAddress own;
    private final MessageSource messages;

    SiteNews(Care care, Fleet fleet, OwnAddress own, MessageSource messages) {
        this.care = care;
        this.fleet = fleet;
        this.own = own;
        this.messages = messages;
    }

    /** The news of one place with their counts. */
    record News(String siteName, int late, int soon, int notReady, Chapter chapter) {

        boolean nothing() {
            return late + soon + notReady == 0;
        }
    }

    News of(Site site, Show show) {
        List<Task> open = care.openTasksAt(Set.of(site.id())).stream()
                .filter(task -> task.openOn(show.today()))
                .toList();
        List<Task> late = open.stream().filter(task -> task.late(show.today())).toList();
        List<Task> soon = open.stream()
                .filter(task -> !task.late(show.today()) && task.daysOver(show.today()) >= -DAYS)
                .toList();
        FleetPage notReady =
                fleet.find(FleetQuery.all().at(site.id()).only(Word.NOT_READY).page(0, LINES));
        int unknown = fleet.tallyAt(site.id()).getOrDefault(Word.UNKNOWN, 0);
        List<Part> parts = new ArrayList<>();
        if (!late.isEmpty()) {
            parts.add(tasks("notices.letter.overdue", late, show));
        }
        if (!soon.isEmpty()) {
            parts.add(tasks("notices.letter.soon", soon, show));
        }
        if (notReady.total() > 0) {
            parts.add(notReady(notReady, show));
        }
        Chapter chapter = new Chapter(
                say("notices.letter.siteDay", site.name(), show.longDay(show.today())),
                unknown == 0 ? List.of() : List.of(say("notices.letter.unknown", unknown)),
                parts);
        return new News(site.name(), late.size(), soon.size(), notReady.total(), chapter);
    }

    /** A list of tasks, the latest first. */
    Part tasks(String heading, List<Task> tasks, Show show) {
        List<Item> items = tasks.stream()
                .limit(LINES)
                .map(task -> new Item(task.tag(), words(task, show), own.forLinks() + "/tasks/" + task.id()))
                .collect(Collectors.toCollection(ArrayList::new));
        more(items, tasks.size());
        return new Part(say(heading, tasks.size()), items);
    }

    private String words(Task task, Show show) {
        long over = task.daysOver(show.today());
        String when = task.late(show.today())
                ? say("notices.letter.over", over, show.day(task.dueOn()))
                : say("notices.letter.by", show.day(task.dueOn()));
        String where = task.positionName() == null ? "" : ", " + task.positionName();
        return say("notices.letter.task", Phrases.said(show.locale(), task.title()), when, show.minutes(task.minutes()))
                + where;
    }

    private Part notReady(FleetPage page, Show show) {
        List<Item> items = page.rows().stream()
                .map(row -> new Item(row.tag(), why(row, show), own.forLinks() + "/pumps/" + row.unitId()))
                .collect(Collectors.toCollection(ArrayList::new));
        more(items, page.total());
        return new Part(say("notices.letter.notReady", page.total()), items);
    }

    private String why(FleetRow row, Show show) {
        return row.readiness().reasons().stream()
                .filter(reason -> reason.word() == Word.NOT_READY)
                .map(reason -> messages.getMessage(reason.code(), reason.arguments(show), show.locale()))
                .collect(Collectors.joining("; "));
    }

    private void more(List<Item> items, int total) {
        if (total > items.size()) {
            items.add(new Item("", say("notices.letter.more", total - items.size()), own.forLinks() + "/"));
        }
    }

    private String say(String code, Object... arguments) {
        return messages.getMessage(code, arguments, LocaleContextHolder.getLocale());
    }
}
