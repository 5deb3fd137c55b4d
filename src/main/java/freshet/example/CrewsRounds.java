package freshet.example;

import freshet.care.Care;
import freshet.care.Task;
import freshet.checklists.Phase;
import freshet.hands.Hands;
import freshet.people.Person;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.rounds.Chosen;
import freshet.rounds.NoAccessWhy;
import freshet.rounds.Round;
import freshet.rounds.RoundDraft;
import freshet.rounds.Rounds;
import freshet.rounds.Stop;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The rounds of the crew: the contractor's spring round with its shut doors, a turn of the yard for today, and who has how much time. */
final class CrewsRounds {

    /** 2.4 people of 850 minutes a week. */
    private static final Map<String, Integer> MINUTES =
            Map.of("ilse", 600, "teo", 340, "nadia", 60, "wim", 180, "freya", 600, "jonah", 260);

    private final Pumps pumps;
    private final Care care;
    private final Rounds rounds;
    private final Hands hands;
    private final Clock clock;

    private long springRound;

    CrewsRounds(Pumps pumps, Care care, Rounds rounds, Hands hands, Clock clock) {
        this.pumps = pumps;
        this.care = care;
        this.rounds = rounds;
        this.hands = hands;
        this.clock = clock;
    }

    void planThem(Map<String, Person> crew) {
        Person ilse = crew.get("ilse");
        Person freya = crew.get("freya");
        MINUTES.forEach((name, minutes) -> hands.write(crew.get(name).id(), -1, minutes, Set.of(), ilse));
        List<Unit> units = pumps.units(pumps.activeUnitIds()).stream()
                .sorted(Comparator.comparing(Unit::tag))
                .toList();
        LocalDate today = LocalDate.now(clock.withZone(units.get(0).stand().zone()));
        List<Task> openings = units.stream()
                .filter(unit -> unit.tag().startsWith("OS-"))
                .flatMap(unit -> nextOpening(unit, today).stream())
                .limit(12)
                .toList();
        LocalDate opens = openings.stream()
                .map(Task::opensOn)
                .max(Comparator.naturalOrder())
                .orElse(today);
        springRound = rounds.plan(
                RoundDraft.of("Spring round, Osterby", opens.isAfter(today) ? opens : today, freya.id())
                        .with(openings.stream()
                                .map(task -> Chosen.task(task.id()))
                                .toList()),
                freya);
        rounds.plan(
                RoundDraft.of("Turn of the yard", today, ilse.id())
                        .looking(List.of(id("BF-25"), id("BF-03"), id("BF-14"))),
                ilse);
        note("OS-02", "Ring first. Closed on Wednesdays.", freya);
        note("OS-03", "Side gate; the dog is loud and friendly. Park on the lane.", freya);
        note("QM-104", "Key safe behind the bins; Wim has the code.", crew.get("wim"));
    }

    private Optional<Task> nextOpening(Unit unit, LocalDate today) {
        return care.tasksOf(unit.id()).stream()
                .filter(task -> task.open()
                        && task.phase() == Phase.OPENING
                        && !task.dueOn().isBefore(today))
                .min(Comparator.comparing(Task::dueOn));
    }

    private long id(String tag) {
        return pumps.unitTagged(tag).orElseThrow().id();
    }

    private void note(String tag, String note, Person by) {
        long site = pumps.unitTagged(tag).orElseThrow().stand().siteId();
        rounds.writeAccess(site, rounds.access(site).version(), note, by);
    }

    /** After the crew has worked: two of the customers' doors stayed shut. */
    void noteShutDoors(Map<String, Person> crew) {
        Round round = rounds.round(springRound);
        List<Stop> left = round.left().stream().limit(2).toList();
        for (int i = 0; i < left.size(); i++) {
            rounds.noAccess(
                    round.id(),
                    left.get(i).id(),
                    i == 0 ? NoAccessWhy.NOBODY_THERE : NoAccessWhy.LOCKED,
                    i == 0 ? "Card left at the door." : null,
                    clock.instant().minusSeconds(3600),
                    crew.get("jonah"));
        }
    }
}
