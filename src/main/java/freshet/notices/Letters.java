package freshet.notices;

import freshet.care.Care;
import freshet.care.Task;
import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.measures.Show;
import freshet.notices.Letter.Chapter;
import freshet.notices.Letter.Item;
import freshet.notices.Letter.Link;
import freshet.notices.Letter.Part;
import freshet.people.Person;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.pumps.Stand;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Words each mail from what stands at the moment of sending, in the units that its reader reads. */
@Component
class Letters {

    private final SiteNews news;
    private final Care care;
    private final Findings findings;
    private final Pumps pumps;
    private final Places places;
    private final OwnAddress own;
    private final MessageSource messages;
    private final JdbcClient jdbc;
    private final Clock clock;

    Letters(
            SiteNews news,
            Care care,
            Findings findings,
            Pumps pumps,
            Places places,
            OwnAddress own,
            MessageSource messages,
            JdbcClient jdbc,
            Clock clock) {
        this.news = news;
        this.care = care;
        this.findings = findings;
        this.pumps = pumps;
        this.places = places;
        this.own = own;
        this.messages = messages;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** The letter in the language of this thread, or none when there is nothing to say any more; {@code secret} stops such mail, or says yes to an address. */
    Optional<Letter> letter(Mail mail, Person reader, Choices choices, String secret) {
        Show show = new Show(reader.unitSystem(), reader.locale(), LocalDate.ofInstant(clock.instant(), mail.zone()));
        Optional<Letter> letter = switch (mail.kind()) {
            case ADDRESS -> address(reader, secret);
            case DIGEST -> digest(mail, choices, show);
            case OVERDUE -> overdue(mail, choices, show);
            case DANGER -> danger(mail, show);
        };
        return mail.kind() == MailKind.ADDRESS ? letter : letter.map(its -> withLinks(its, mail.kind(), secret));
    }

    private Optional<Letter> address(Person reader, String secret) {
        Chapter chapter = new Chapter(
                say("notices.letter.address.title"),
                List.of(say("notices.letter.address.asked", reader.fullName()), say("notices.letter.address.not")),
                List.of());
        Link yes = new Link(say("notices.letter.address.yes"), own.forLinks() + "/notices/confirm/" + secret);
        return Optional.of(new Letter(chapter.heading(), List.of(chapter), List.of(), List.of(yes)));
    }

    private Optional<Letter> digest(Mail mail, Choices choices, Show show) {
        List<SiteNews.News> told = places.sites().stream()
                .filter(site -> site.zone().equals(mail.zone()) && choices.covers(site.id()))
                .map(site -> news.of(site, show))
                .filter(its -> !its.nothing())
                .toList();
        if (told.isEmpty()) {
            return Optional.empty();
        }
        List<String> counts = new ArrayList<>();
        count(
                counts,
                "notices.letter.overdue.count",
                told.stream().mapToInt(SiteNews.News::late).sum());
        count(
                counts,
                "notices.letter.soon.count",
                told.stream().mapToInt(SiteNews.News::soon).sum());
        count(
                counts,
                "notices.letter.notReady.count",
                told.stream().mapToInt(SiteNews.News::notReady).sum());
        String where = told.size() == 1 ? told.get(0).siteName() : say("notices.letter.places", told.size());
        String every = choices.rhythm() == Rhythm.DAILY
                ? say("notices.every.DAILY", "%d:00".formatted(choices.sendHour()))
                : say(
                        "notices.every.WEEKLY",
                        say("notices.weekday." + choices.weekday()),
                        "%d:00".formatted(choices.sendHour()));
        return Optional.of(new Letter(
                say("notices.letter.digest.title", String.join(", ", counts), where),
                told.stream().map(SiteNews.News::chapter).toList(),
                List.of(say("notices.letter.digest.because", every)),
                List.of()));
    }

    private void count(List<String> counts, String code, int count) {
        if (count > 0) {
            counts.add(say(code, count));
        }
    }

    private Optional<Letter> overdue(Mail mail, Choices choices, Show show) {
        Set<Long> told = jdbc.sql("select task_id from notice_task where mail_id = ?")
                .param(mail.id())
                .query(Long.class)
                .set();
        Set<Long> siteIds = places.sites().stream()
                .filter(site -> site.zone().equals(mail.zone()))
                .map(site -> site.id())
                .collect(Collectors.toSet());
        Map<String, List<Task>> late = care.openTasksAt(siteIds).stream()
                .filter(task -> told.contains(task.id()) && task.late(show.today()))
                .collect(Collectors.groupingBy(Task::siteName, LinkedHashMap::new, Collectors.toList()));
        if (late.isEmpty()) {
            return Optional.empty();
        }
        int count = late.values().stream().mapToInt(List::size).sum();
        List<Chapter> chapters = late.entrySet().stream()
                .map(each -> new Chapter(
                        each.getKey(), List.of(), List.of(news.tasks("notices.letter.overdue", each.getValue(), show))))
                .toList();
        return Optional.of(new Letter(
                say("notices.letter.late.title", count, choices.overdueDays()),
                chapters,
                List.of(say("notices.letter.late.because", choices.overdueDays())),
                List.of()));
    }

    private Optional<Letter> danger(Mail mail, Show show) {
        Finding finding = findings.finding(mail.subjectId());
        if (!finding.open() || finding.severity() < Finding.DANGER) {
            return Optional.empty();
        }
        Stand stand = pumps.unit(finding.unitId()).stand();
        String place = stand.positionName() == null ? stand.siteName() : stand.siteName() + ", " + stand.positionName();
        List<String> sentences = List.of(
                say("notices.letter.danger.caution"),
                say(
                        "notices.letter.danger.written",
                        finding.openedByName() == null ? say("notices.somebody") : finding.openedByName(),
                        show.dayTime(finding.openedAt(), finding.zone())));
        Part what = new Part(
                say("notices.letter.danger.found"),
                List.of(new Item(finding.tag(), finding.what(), own.forLinks() + "/pumps/" + finding.unitId())));
        return Optional.of(new Letter(
                say("notices.letter.danger.title", finding.tag(), stand.siteName()),
                List.of(new Chapter(say("notices.letter.danger.at", finding.tag(), place), sentences, List.of(what))),
                List.of(say("notices.letter.danger.because")),
                List.of()));
    }

    private Letter withLinks(Letter letter, MailKind kind, String secret) {
        List<Link> links = List.of(
                new Link(say("notices.letter.open"), own.forLinks() + "/"),
                new Link(say("notices.letter.change"), own.forLinks() + "/notices"),
                new Link(say("notices.letter.stop." + kind), stopAddress(secret)));
        return new Letter(letter.title(), letter.chapters(), letter.closing(), links);
    }

    String stopAddress(String secret) {
        return own.forLinks() + "/notices/stop/" + secret;
    }

    private String say(String code, @Nullable Object... arguments) {
        return messages.getMessage(code, arguments, LocaleContextHolder.getLocale());
    }
}
