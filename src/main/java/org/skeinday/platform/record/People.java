package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * Names of persons and the coach's PIN, in people.json beside the journal: outside the chain, so that a person can be
 * erased without breaking it. The file carries the folder's id and a checksum.
 */
public final class People {
    static final String FILE = PeopleFile.NAME;

    private final Path path;
    private PeopleFile now;
    private boolean kept;
    private Set<String> nameless = Set.of();

    private People(Path path, PeopleFile now, boolean kept) {
        this.path = path;
        this.now = now;
        this.kept = kept;
    }

    /**
     * @param id of the folder; empty in one of an older program, whose file is taken as it is, once
     * @throws Damaged when the file is none, was altered, or belongs to another folder: with where there is a good one
     */
    static People open(Path folder, String id) throws IOException {
        Path path = folder.resolve(FILE);
        if (!Files.exists(path)) {
            return new People(path, new PeopleFile(id.isEmpty() ? FolderMark.newId() : id, "", Map.of()), false);
        }
        try {
            PeopleFile read = PeopleFile.read(path, id);
            return read.folder().isEmpty()
                    ? new People(path, new PeopleFile(FolderMark.newId(), read.pin(), read.names()), false)
                    : new People(path, read, true);
        } catch (Damaged e) {
            throw new Damaged(e.getMessage() + ". " + PeopleInBackups.wayOut(folder, Set.of()));
        }
    }

    /** Lets these be without a name, while they are recorded as erased. */
    synchronized void goWithout(Set<String> persons) {
        nameless = Set.copyOf(persons);
    }

    /** The id of the folder that these people belong to. */
    synchronized String folder() {
        return now.folder();
    }

    /** The person's display name; an erased or unknown person is called "someone". */
    public synchronized String name(String person) {
        return now.names().getOrDefault(person, "someone");
    }

    public synchronized Map<String, String> names() {
        return now.names();
    }

    /** Salted slow hash of the coach's PIN, empty before one was made. */
    public synchronized String pinHash() {
        return now.pin();
    }

    public synchronized void keepPin(String hash) throws IOException {
        keep(hash, now.names());
    }

    synchronized void add(Map<String, String> more) throws IOException {
        if (!more.isEmpty()) {
            Map<String, String> all = new LinkedHashMap<>(now.names());
            all.putAll(more);
            keep(now.pin(), all);
        }
    }

    synchronized void erase(Set<String> persons) throws IOException {
        Map<String, String> left = Erasing.without(now.names(), persons);
        if (left.size() < now.names().size() || !kept) {
            keep(now.pin(), left);
        }
    }

    /**
     * Drops names that the journal does not know or has erased.
     *
     * @throws Damaged when it knows a person, not erased, who has no name here
     */
    synchronized void settle(PeopleOfJournal journal) throws IOException {
        refuseMissing(journal);
        erase(journal.needlessIn(now.names()));
    }

    /** @throws Damaged when a person of the journal, not erased, has no name here */
    synchronized void refuseMissing(PeopleOfJournal journal) throws IOException {
        Set<String> missing = journal.missingIn(now.names());
        missing.removeAll(nameless);
        if (!missing.isEmpty()) {
            throw new Damaged(path + " lacks the names of " + missing.size() + " of the record's people. "
                    + PeopleInBackups.wayOut(path.resolveSibling("."), missing));
        }
    }

    private void keep(String pin, Map<String, String> names) throws IOException {
        PeopleFile next = new PeopleFile(now.folder(), pin, names);
        next.write(path);
        now = next;
        kept = true;
    }
}
