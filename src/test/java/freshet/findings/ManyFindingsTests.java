package freshet.findings;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.CareYard;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

@FreshetTest
class ManyFindingsTests {

    @Autowired
    Findings findings;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    private long write(long unit, String at, int severity, String what) {
        clock.set(at);
        return findings.write(FindingDraft.about(unit, severity, what), yard.ilse());
    }

    @Test
    void handsOutTheFindingsOfManyUnitsFromASeverityOnOldestFirst() {
        clock.set("2026-03-01T12:00:00Z");
        long one = yard.unit("BF-01").id();
        long other = yard.unit("BF-02").id();
        long clean = yard.unit("BF-03").id();
        long unasked = yard.unit("BF-04").id();
        write(one, "2026-03-04T12:00:00Z", 4, "later");
        long closed = write(one, "2026-03-02T12:00:00Z", 3, "earlier");
        write(one, "2026-03-03T12:00:00Z", 2, "too small");
        write(other, "2026-03-02T12:00:00Z", 3, "other");
        write(unasked, "2026-03-02T12:00:00Z", 3, "unasked");
        clock.set("2026-03-05T12:00:00Z");
        findings.close(closed, 0, "new seal", yard.ilse());

        Map<Long, List<Finding>> found = findings.findingsOf(List.of(one, other, clean), 3);
        assertThat(found).containsOnlyKeys(one, other);
        assertThat(found.get(one)).extracting(Finding::what).containsExactly("earlier", "later");
        assertThat(found.get(one)).extracting(Finding::open).containsExactly(false, true);
        assertThat(found.get(other)).containsExactlyElementsOf(findings.findingsOf(other));
        assertThat(findings.findingsOf(List.of(), 0)).isEmpty();
    }
}
