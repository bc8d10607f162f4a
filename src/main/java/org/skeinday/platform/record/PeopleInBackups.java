package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Where lost names are found again. */
final class PeopleInBackups {
    private PeopleInBackups() {}

    /** What to do, in words: naming the newest backup of the folder that has all these people. */
    static String wayOut(Path folder, Set<String> people) throws IOException {
        Path data = folder.toAbsolutePath().normalize();
        String id = FolderMark.read(data).folder();
        List<Path> all = BackupList.inOrder(data.resolve(Backup.FOLDER), FolderMark.read(data));
        for (int i = all.size() - 1; i >= 0; i--) {
            if (has(all.get(i), id, people)) {
                return "The newest backup that has them is " + all.get(i) + ": copy " + PeopleFile.NAME
                        + " from it into " + data + ", which keeps every record, and start again.";
            }
        }
        return "No backup in " + data.resolve(Backup.FOLDER)
                + " has them all. Put it back from a backup that is elsewhere:"
                + " copy " + PeopleFile.NAME + " from it into " + data + "; or put an older backup back: restore BACKUP"
                + " --data " + data + ". Where nobody has their names any more, go on without them: lost-people --data "
                + data + ".";
    }

    /** The names of these people that backups in the folder have, the newest of each. */
    static Map<String, String> names(Path folder, Set<String> people) throws IOException {
        FolderMark mark = FolderMark.read(folder);
        Map<String, String> found = new TreeMap<>();
        for (Path backup : BackupList.inOrder(folder.resolve(Backup.FOLDER), mark)) { // a newer one overwrites an older
            try {
                PeopleFile.read(backup.resolve(PeopleFile.NAME), mark.folder()).names().entrySet().stream()
                        .filter(name -> people.contains(name.getKey()))
                        .forEach(name -> found.put(name.getKey(), name.getValue()));
            } catch (Damaged | NoSuchFileException e) {
                // the next one may have them
            }
        }
        return found;
    }

    private static boolean has(Path backup, String id, Set<String> people) throws IOException {
        try {
            PeopleFile file = PeopleFile.read(backup.resolve(PeopleFile.NAME), id);
            return file.names().keySet().containsAll(people);
        } catch (Damaged | NoSuchFileException e) {
            return false;
        }
    }
}
