package freshet.readings;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

/** The flow tests. */
interface FlowTestRepository extends JpaRepository<FlowTest, Long> {

    /** Which tests of a unit say what it still gives: its first and its latest that stand, and how many stand. */
    record Ends(Long unitId, Long firstId, Long latestId, Long tests) {}

    List<FlowTest> findByUnitIdOrderByAtAscIdAsc(long unitId);

    List<FlowTest> findByUnitIdInAndWithdrawnAtIsNullOrderByAtDescIdDesc(Collection<Long> unitIds);

    @Query("select t from FlowTest t where t.unitId = :unitId and t.at = :at and t.withdrawnAt is null")
    Optional<FlowTest> standingAt(long unitId, java.time.Instant at);

    @Query(nativeQuery = true, value = """
                    select unit_id, (array_agg(id order by at, id))[1], (array_agg(id order by at desc, id desc))[1], count(*)
                    from flow_test where unit_id in (:unitIds) and withdrawn_at is null group by unit_id""")
    List<Ends> ends(Collection<Long> unitIds);

    /** Lets only one at a time write tests of a unit, until the transaction ends. */
    @Query(nativeQuery = true, value = "select 1 from pg_advisory_xact_lock(7, cast(:unitId as integer))")
    int hold(long unitId);
}
