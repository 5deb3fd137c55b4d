package freshet.care;

import freshet.board.Board;
import freshet.board.Why;
import freshet.findings.Finding;
import freshet.findings.Hold;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Stale;
import freshet.photos.SentPhoto;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to the work: tasks, answering and signing them, and the records. */
@Service
@Transactional
public class Care {

    private final FollowUps followUps;
    private final TaskTable tasks;
    private final RecordTable records;
    private final Desk desk;
    private final Corrections corrections;
    private final PhotoTable photoTable;
    private final PhotoDesk photoDesk;
    private final Board board;
    private final Pumps pumps;
    private final People people;
    private final ApplicationEventPublisher events;

    Care(
            FollowUps followUps,
            TaskTable tasks,
            RecordTable records,
            Desk desk,
            Corrections corrections,
            PhotoTable photoTable,
            PhotoDesk photoDesk,
            Board board,
            Pumps pumps,
            People people,
            ApplicationEventPublisher events) {
        this.followUps = followUps;
        this.tasks = tasks;
        this.records = records;
        this.desk = desk;
        this.corrections = corrections;
        this.photoTable = photoTable;
        this.photoDesk = photoDesk;
        this.board = board;
        this.pumps = pumps;
        this.people = people;
        this.events = events;
    }

    /** Opens the check that a unit needs after a finding that stopped its use was closed. */
    public void checkAfterRepair(long unitId, long findingId, Why why) {
        later(unitId, unit -> followUps.checkAfterRepair(unit, findingId, why));
    }

    /** Opens the check that a unit needs after a finding of any severity was mended. */
    public void checkAfterRepair(Finding mended) {
        checkAfterRepair(mended.unitId(), mended.id(), Why.of("mended", mended.what()));
    }

    /** Opens the re-test that is the way back for a unit that is held. */
    public void reTest(Hold hold) {
        later(hold.unitId(), unit -> followUps.reTest(unit, hold));
    }

    private void later(long unitId, Consumer<Unit> opening) {
        board.holdOffPlanning();
        events.publishEvent(new FollowUp(unitId, opening));
    }

    /** Opens what follows, unless planning has opened it already. */
    public void follow(FollowUp followUp) {
        followUp.opening().accept(pumps.unit(followUp.unitId()));
        changed(Set.of(followUp.unitId()));
    }

    /** Open tasks that nobody began take as long as the newest version of their checklist says. */
    public void planWith(long checklistId, int minutes) {
        board.holdOffPlanning();
        changed(tasks.planWith(checklistId, minutes));
    }

    @Transactional(readOnly = true)
    public Task task(long id) {
        return tasks.task(id).orElseThrow(() -> new NotFound("task", id));
    }

    /** All tasks of a unit, by the day they are due. */
    @Transactional(readOnly = true)
    public List<Task> tasksOf(long unitId) {
        return tasks.ofUnit(unitId);
    }

    /** All open tasks at these sites, by the day they are due. */
    @Transactional(readOnly = true)
    public List<Task> openTasksAt(Set<Long> siteIds) {
        return tasks.openAt(siteIds);
    }

    /** A task with its checklist and what has been answered so far. */
    @Transactional(readOnly = true)
    public Worksheet worksheet(long taskId) {
        return desk.worksheet(task(taskId));
    }

    /** What the person measured with last, to begin a task with. */
    @Transactional(readOnly = true)
    public Optional<String> inHand(Person person) {
        return tasks.inHand(person.id());
    }

    /** What this person measured with before, or anybody on this unit, the latest first. */
    @Transactional(readOnly = true)
    public List<String> instruments(long unitId, Person person) {
        return records.instruments(unitId, person.id());
    }

    /** Keeps answers without signing, as they were typed; {@code version} is that of the task when the form was opened. */
    public void saveAnswers(long taskId, int version, List<Answer> answers, Person by) {
        saveAnswers(taskId, version, answers, TaskNotes.NONE, by);
    }

    /**
     * Keeps answers and what was typed beside them, without signing. A task that nobody began yet is begun with the version of its
     * checklist that the answers belong to, and stays with it.
     *
     * @throws Stale when the task was changed meanwhile, or begun with another version than the answers belong to
     */
    public void saveAnswers(long taskId, int version, List<Answer> answers, TaskNotes notes, Person by) {
        board.holdOffPlanning();
        desk.save(taskId, version, answers, notes, by);
    }

    /** The photos at the lines of a task so far. */
    @Transactional(readOnly = true)
    public List<TaskPhoto> photosOf(long taskId) {
        return photoTable.ofTask(taskId);
    }

    /** Lays photos beside the lines of a task that is not signed, all or none; each field says where its photo belongs. */
    public void addPhotos(long taskId, List<SentPhoto> sent, Person by) {
        board.holdOffPlanning();
        photoDesk.add(taskId, sent, by);
    }

    /** Lays a kept photo beside a line of a task that is not signed. */
    public void addPhoto(long taskId, PhotoPlace place, long photoId, Person by) {
        board.holdOffPlanning();
        photoDesk.add(taskId, place, photoId, by);
    }

    /** Takes a photo out of a task that is not signed. */
    public void removePhoto(long taskId, long taskPhotoId) {
        board.holdOffPlanning();
        photoDesk.remove(taskId, taskPhotoId);
    }

    /**
     * Signs a task and gives the id of its record. Lines for a competent person that the signer is not are left, and a task for them
     * is opened.
     *
     * @throws AlreadySigned when somebody signed it meanwhile
     */
    public long sign(long taskId, SignOff signOff, Person by) {
        board.holdOffPlanning();
        long recordId = desk.sign(taskId, signOff, by);
        Task task = task(taskId);
        people.note(by, "task signed", "unit:" + task.unitId(), task.title() + ", record " + recordId);
        changed(board.planAfterWork(Set.of(task.unitId())));
        return recordId;
    }

    /** Corrects a signed record by a new one, gives the id of that. */
    public long correct(long recordId, Correction correction, Person by) {
        board.holdOffPlanning();
        long id = corrections.correct(recordId, correction, by);
        ServiceRecord record = record(id);
        people.note(by, "record corrected", "unit:" + record.unitId(), "record " + recordId + " by record " + id);
        changed(board.planAfterWork(Set.of(record.unitId())));
        return id;
    }

    /** Gives open tasks to a person, or to nobody; whoever works on one is not disturbed. */
    public void assign(List<Long> taskIds, @Nullable Long personId, Person by) {
        tasks.assign(taskIds, personId);
        for (long id : taskIds) {
            people.note(by, "task assigned", "task:" + id, personId == null ? null : "person:" + personId);
        }
    }

    /** Notes in the trail that somebody tried to change what is signed; nothing else happens. */
    public void refuseChange(long recordId, Person by) {
        ServiceRecord record = record(recordId);
        people.note(by, "change of a signed record refused", "unit:" + record.unitId(), "record " + recordId);
    }

    @Transactional(readOnly = true)
    public ServiceRecord record(long id) {
        return records.record(id).orElseThrow(() -> new NotFound("record", id));
    }

    /** All signed records of a unit, in the order of signing, corrected ones too. */
    @Transactional(readOnly = true)
    public List<ServiceRecord> recordsOf(long unitId) {
        return records.ofUnit(unitId);
    }

    /** Whether every digest of a unit's records still fits what was signed, its photos too, and the record before it. */
    @Transactional(readOnly = true)
    public boolean chainHolds(long unitId) {
        String before = null;
        List<ServiceRecord> chain = records.ofUnit(unitId);
        for (ServiceRecord record : chain) {
            if (!record.digest().equals(Digest.of(before, record))) {
                return false;
            }
            before = record.digest();
        }
        return photoDesk.unchanged(chain);
    }

    private void changed(Set<Long> unitIds) {
        if (!unitIds.isEmpty()) {
            events.publishEvent(new CareChanged(Set.copyOf(unitIds)));
        }
    }
}
