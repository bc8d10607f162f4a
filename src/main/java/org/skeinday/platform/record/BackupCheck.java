package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** Looks through all that a backup holds before anything is done with it. */
public final class BackupCheck {
    /** What devices need to find the server again, and what it looks like. */
    private static final Map<String, String> FORMS = Map.of("join-code", "[0-9a-f]{32}", "port", "\\d{1,5}");

    private BackupCheck() {}

    /**
     * Checks a backup by itself: the journal's chain to its end, the people, the codes, and each file's sum.
     *
     * @throws Damaged naming the first thing that is not what was backed up
     */
    public static Backup.Made check(Path backup) throws IOException {
        Format.refuseNewer(backup);
        Path journal = backup.resolve(Journal.FILE);
        if (!Files.exists(journal)) {
            throw new Damaged("record 1: there is no " + Journal.FILE + " in " + backup);
        }
        var people = new PeopleOfJournal();
        JournalReader.End end = JournalReader.read(journal, people);
        BackupList list = BackupList.read(backup);
        if (list.records() != end.n() || !list.head().equals(end.hash())) {
            throw new Damaged("record " + (end.n() + 1) + ": the backup " + backup + " was cut; it was made of "
                    + list.records() + " records");
        }
        people(backup, list.folder(), people);
        forms(backup);
        sums(backup, list);
        return new Backup.Made(backup, end.n(), end.hash());
    }

    /** @throws Damaged when its people.json is none, or lacks people of its journal */
    static void people(Path backup, String folder, PeopleOfJournal journal) throws IOException {
        Path file = backup.resolve(People.FILE);
        Map<String, String> names =
                Files.exists(file) ? PeopleFile.read(file, folder).names() : Map.of();
        int missing = journal.missingIn(names).size();
        if (missing > 0) {
            throw new Damaged(file + " lacks the names of " + missing
                    + " of the record's people. Choose another backup," + " or put that file right from one.");
        }
    }

    private static void forms(Path backup) throws IOException {
        for (String name : FORMS.keySet()) {
            Path file = backup.resolve(name);
            if (Files.exists(file) && !hasItsForm(file)) {
                throw new Damaged(file + " is empty or no " + name + ". Choose another backup.");
            }
        }
    }

    /** Whether this is no cut or empty code or port; a start makes those anew. Any other file has no form to look at. */
    static boolean hasItsForm(Path file) throws IOException {
        String form = FORMS.get(file.getFileName().toString());
        return form == null
                || new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1)
                        .strip()
                        .matches(form);
    }

    private static void sums(Path backup, BackupList list) throws IOException {
        for (var sum : list.sums().entrySet()) {
            Path file = backup.resolve(sum.getKey());
            if (!Files.exists(file) || !Sha.ofFile(file).equals(sum.getValue())) {
                throw new Damaged(file + (Files.exists(file) ? " was altered" : " is missing") + ": it is not what "
                        + BackupList.FILE + " says was backed up. Choose another backup.");
            }
        }
    }
}
