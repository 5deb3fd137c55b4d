package freshet.care;

import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.line;
import static freshet.care.CareYard.with;
import static freshet.care.CareYard.without;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.checklists.CheckLine;
import freshet.checklists.Phase;
import freshet.checklists.Verdict;
import freshet.findings.Findings;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.pumps.Unit;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

@FreshetTest
class SigningTests {

    private static final Instant MORNING = Instant.parse("2026-03-14T14:00:00Z");

    @Autowired
    Care care;

    @Autowired
    Findings findings;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    Person ilse;
    Person teo;
    Unit unit;
    Task opening;

    @BeforeEach
    void springMorning() {
        clock.set(MORNING);
        ilse = yard.ilse();
        teo = yard.teo();
        unit = yard.unit("BF-04");
        opening = only(Phase.OPENING, 2026);
    }

    private Task only(Phase phase, int year) {
        return care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == phase && task.opensOn().getYear() == year)
                .findFirst()
                .orElseThrow();
    }

    private Worksheet sheet() {
        return care.worksheet(opening.id());
    }

    private long sign(List<Answer> answers, Person by) {
        return care.sign(opening.id(), SignOff.of(care.task(opening.id()).version(), answers), by);
    }

    private static Set<String> codesAt(CheckLine line, ThrowingCallable refused) {
        Refused refusal = catchThrowableOfType(Refused.class, refused);
        assertThat(refusal).as("refused").isNotNull();
        return refusal.wrongs().stream()
                .filter(wrong -> wrong.field().startsWith("line[" + line.id() + "]"))
                .map(wrong -> wrong.field().substring(wrong.field().indexOf('.') + 1) + " " + wrong.code())
                .collect(Collectors.toSet());
    }

    @Test
    void signsARecordThatSaysWhoWhereWhenAndWhat() {
        clock.advance(Duration.ofMinutes(35));
        long id = sign(allPass(sheet(), ilse), ilse);

        ServiceRecord record = care.record(id);
        assertThat(record.title()).isEqualTo("Opening 2026");
        assertThat(record.tag()).isEqualTo("BF-04");
        assertThat(record.serial()).isEqualTo("S-BF-04");
        assertThat(record.place()).isEqualTo("Brackenfold Pump Yard");
        assertThat(record.signedName()).isEqualTo("Ilse Marrow");
        assertThat(record.signedAt()).isEqualTo(MORNING.plus(Duration.ofMinutes(35)));
        assertThat(record.lines()).hasSameSizeAs(sheet().checklist().lines());
        RecordLine amps = record.lines().stream()
                .filter(line -> line.question().startsWith("Running amps"))
                .findFirst()
                .orElseThrow();
        assertThat(amps.answer()).isEqualTo("4.5 A");
        assertThat(amps.number()).isEqualTo(4.5);
        assertThat(amps.limits())
                .isEqualToNormalizingUnicode("pass 3.6\u00a0A to 4.8\u00a0A, watch below and to 5.3\u00a0A");
        assertThat(amps.verdict()).isEqualTo(Verdict.PASS);
        assertThat(care.task(opening.id()).state()).isEqualTo(TaskState.SIGNED);
        assertThat(care.task(opening.id()).recordId()).isEqualTo(id);
        assertThat(findings.findingsOf(unit.id())).isEmpty();
    }

    @Test
    void refusesASignWithoutTheUnpluggedTickAtItsPlace() {
        CheckLine unplugged = line(sheet(), "Unplugged");
        assertThat(sheet().checklist().lines().get(0)).isEqualTo(unplugged);
        List<Answer> answers = allPass(sheet(), ilse);

        assertThat(codesAt(unplugged, () -> sign(without(answers, unplugged), ilse)))
                .containsExactly("answer care.line.safetyFirst");
        assertThat(codesAt(unplugged, () -> sign(with(answers, Answer.of(unplugged.id(), CheckLine.NO)), ilse)))
                .containsExactly("answer care.line.safetyFirst");
        assertThat(codesAt(
                        unplugged,
                        () -> sign(with(answers, Answer.of(unplugged.id(), CheckLine.DOES_NOT_APPLY)), ilse)))
                .containsExactly("answer checklists.applies");
        assertThat(care.task(opening.id()).open()).isTrue();
    }
}
