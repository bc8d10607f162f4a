package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.skeinday.platform.db.Tx;

/**
 * The way out where names of the record's people are lost: those that some backup has come back, and the others are
 * recorded as erased once the coach says so, since a start goes on with no person whose name is missing.
 */
public final class LostPeople {
    private static final String KIND = "person.erase-lost";

    private final Path folder;

    /**
     * Whose names people.json lacks.
     *
     * @param found names that a backup in the folder has, by person id
     * @param gone ids of the others
     * @param unreadable whether people.json cannot be used at all: then the coach's PIN is lost, too
     */
    public record Found(Map<String, String> found, Set<String> gone, boolean unreadable) {
        /** Whether there is nothing to mend. */
        public boolean isWhole() {
            return found.isEmpty() && gone.isEmpty() && !unreadable;
        }
    }

    /** @param persons ids of those whom nobody knows a name for */
    record EraseLost(List<String> persons) {}

    public LostPeople(Path folder) {
        this.folder = folder;
    }

    /**
     * Looks and changes nothing.
     *
     * @throws AlreadyRunning when a program works on the folder
     * @throws Damaged when its journal is not whole: that is put right first
     */
    public Found look() throws IOException {
        Format.refuseNewer(folder);
        FolderMark.refuseWithoutJournal(folder);
        try (FolderLock lock = FolderLock.take(folder)) {
            var journal = new PeopleOfJournal();
            JournalReader.read(folder.resolve(Journal.FILE), new LinesTogether(HeldBefore.of(folder), journal));
            Set<String> missing = journal.missingIn(kept().names());
            Map<String, String> found = PeopleInBackups.names(folder, missing);
            Set<String> gone = new TreeSet<>(missing);
            gone.removeAll(found.keySet());
            return new Found(found, gone, isUnreadable());
        }
    }

    /**
     * Brings back what was found and records the others as erased, as one act. Killed in between, the folder refuses to
     * start as before.
     *
     * @param act 32 random hexadecimal digits
     * @return records that the journal has then
     */
    public long mend(Found lost, Projection projection, Clock clock, String act) throws IOException {
        try (FolderLock lock = FolderLock.take(folder)) {
            keepFound(lost, clock);
        }
        try (ActStore record = ActStore.openWithout(folder, projection, clock, lost.gone())) {
            return lost.gone().isEmpty() ? record.journal().n() : erase(record, lost.gone(), clock, act);
        }
    }

    /** A file that is of no use is set aside: somebody may read a name in it still. */
    private void keepFound(Found lost, Clock clock) throws IOException {
        Path file = folder.resolve(PeopleFile.NAME);
        PeopleFile kept = kept();
        if (lost.unreadable()) {
            String aside = "people-" + Backup.SET_ASIDE + Backup.NAME.format(clock.instant()) + ".json";
            Files.move(file, Backup.free(folder.resolve(aside)), StandardCopyOption.ATOMIC_MOVE);
        }
        Map<String, String> names = new LinkedHashMap<>(kept.names());
        names.putAll(lost.found());
        new PeopleFile(kept.folder(), kept.pin(), names).write(file);
    }

    /** As it is, or one with nobody in it. */
    private PeopleFile kept() throws IOException {
        String id = FolderMark.read(folder).folder();
        Path file = folder.resolve(PeopleFile.NAME);
        PeopleFile kept =
                !Files.exists(file) || isUnreadable() ? new PeopleFile(id, "", Map.of()) : PeopleFile.read(file, id);
        return kept.folder().isEmpty() ? new PeopleFile(FolderMark.newId(), kept.pin(), kept.names()) : kept;
    }

    private boolean isUnreadable() throws IOException {
        Path file = folder.resolve(PeopleFile.NAME);
        if (!Files.exists(file)) {
            return false;
        }
        try {
            PeopleFile.read(file, FolderMark.read(folder).folder());
            return false;
        } catch (Damaged e) {
            return true;
        }
    }

    private static long erase(ActStore record, Set<String> gone, Clock clock, String id) throws IOException {
        var content = Json.MAPPER.valueToTree(new EraseLost(List.copyOf(gone)));
        var act = new Act(id, KIND, "laptop", "", clock.instant(), content);
        var kind = new ActKind<>(KIND, EraseLost.class, LostPeople::decide);
        try (Writer writer = new Writer(record, List.of(kind), clock, WriterSettings.normal(), (topics, n) -> {})) {
            Answer answer = writer.await(act, words -> {});
            if (answer instanceof Answer.Saved saved) {
                return saved.n();
            }
            throw new IOException(
                    answer instanceof Answer.DiskFull full
                            ? "Nobody was recorded as erased. " + full.reason()
                            : "Nobody was recorded as erased. Run the same again.");
        }
    }

    private static Decision decide(Tx tx, ActContext context, EraseLost lost) {
        List<Fact> facts = lost.persons().stream()
                .map(person -> Erasing.fact(person, context.now()))
                .toList();
        return new Decision.Decided(facts, Map.of(), Set.of("contest"));
    }
}
