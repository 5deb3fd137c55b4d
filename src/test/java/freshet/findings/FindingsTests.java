package freshet.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.checklists.Checklists;
import freshet.people.Competence;
import freshet.people.NotAllowed;
import freshet.people.NotFound;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.pumps.Unit;
import java.time.Duration;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

@FreshetTest
class FindingsTests {

    @Autowired
    Findings findings;

    @Autowired
    Checklists checklists;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    Person ilse;
    Person teo;
    Unit unit;

    @BeforeEach
    void oneUnit() {
        clock.set("2026-03-14T14:00:00Z");
        ilse = yard.ilse();
        teo = yard.teo();
        unit = yard.unit("BF-03");
    }

    @Test
    void areWrittenAndClosedByNamedPersonsWithWords() {
        long id = findings.write(FindingDraft.about(unit.id(), 3, " Shaft stuck "), teo);
        clock.advance(Duration.ofDays(2));
        findings.close(id, 0, "Freed and cleaned", ilse);

        Finding finding = findings.finding(id);
        assertThat(finding.what()).isEqualTo("Shaft stuck");
        assertThat(finding.openedByName()).isEqualTo("Teo Brandt");
        assertThat(finding.open()).isFalse();
        assertThat(finding.closedByName()).isEqualTo("Ilse Marrow");
        assertThat(finding.closedHow()).isEqualTo("Freed and cleaned");
        assertThat(finding.closedAt()).isEqualTo("2026-03-16T14:00:00Z");
        assertThat(finding.zone()).isEqualTo(CareYard.CHICAGO);
    }

    @Test
    void areRefusedWithoutWordsOrWithASeverityThatIsNone() {
        Refused refused =
                catchThrowableOfType(Refused.class, () -> findings.write(FindingDraft.about(unit.id(), 5, " "), teo));
        assertThat(refused.wrongs())
                .extracting(wrong -> wrong.field() + " " + wrong.code())
                .containsExactly("severity findings.severity.choose", "what findings.what.missing");
        long id = findings.write(FindingDraft.about(unit.id(), 1, "Hums"), teo);
        assertThat(catchThrowableOfType(Refused.class, () -> findings.close(id, 0, "", teo))
                        .wrongs())
                .extracting(Refused.Wrong::code)
                .containsExactly("findings.how.missing");
        assertThatThrownBy(() -> findings.finding(id + 1000)).isInstanceOf(NotFound.class);
    }

    @Test
    void areClosedOnce() {
        long id = findings.write(FindingDraft.about(unit.id(), 1, "Hums"), teo);
        findings.close(id, 0, "Quiet again", teo);
        assertThatThrownBy(() -> findings.close(id, 0, "Me too", ilse)).isInstanceOf(Stale.class);
        assertThatThrownBy(() -> findings.close(id, 1, "Me too", ilse)).isInstanceOf(Stale.class);
        assertThat(findings.finding(id).closedByName()).isEqualTo("Teo Brandt");
    }

    @Test
    void ofAnElectricalCheckAreClosedByACompetentPersonOnly() {
        long earth = checklists.checklists().get(0).lines().stream()
                .filter(line -> line.competence() == Competence.ELECTRICAL)
                .findFirst()
                .orElseThrow()
                .id();
        long id = findings.write(new FindingDraft(unit.id(), null, earth, 4, "No earth"), ilse);
        assertThatThrownBy(() -> findings.close(id, 0, "Wiggled it", teo)).isInstanceOf(NotAllowed.class);
        findings.close(id, 0, "New cord, 0.2 ohm", ilse);
    }

    @Test
    void stayInOrderOpenAndWorstFirst() {
        long watch = findings.write(FindingDraft.about(unit.id(), 1, "Hums"), teo);
        findings.write(FindingDraft.about(unit.id(), 4, "Cord nicked"), teo);
        findings.write(FindingDraft.about(unit.id(), 2, "Plate bent"), teo);
        findings.close(watch, 0, "Quiet again", teo);
        assertThat(findings.findingsOf(unit.id()))
                .extracting(Finding::what)
                .containsExactly("Cord nicked", "Plate bent", "Hums");
    }
}
