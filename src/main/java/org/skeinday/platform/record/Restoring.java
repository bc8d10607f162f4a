package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.skeinday.platform.db.Database;

/** Puts a backup in the place of a record. */
public final class Restoring {
    private static final String JOIN_CODE = "join-code";

    private Restoring() {}

    /** One step of restoring. */
    interface Step {
        void run() throws IOException;
    }

    /**
     * Puts a backup in place of what is in the data folder, which is set aside in it and never overwritten. Killed in
     * between, the folder is what it was, refuses to start, or is restored; never a fresh day.
     *
     * @throws AlreadyRunning when a program works on the folder
     * @throws Damaged when the backup is not whole: then nothing was changed
     */
    public static Backup.Made restore(Path backup, Path data, Instant now) throws IOException {
        Backup.Made made = BackupCheck.check(backup);
        OwnerOnly.makeFolder(data);
        try (FolderLock lock = FolderLock.take(data)) {
            OwnerOnly.noteOthers(data);
            for (Step step : steps(backup, data, now)) {
                step.run();
            }
        }
        return made;
    }

    /**
     * A mark comes first and the journal last: in between a start finds a used folder without a journal, and refuses. The
     * mark that goes with the backup begins another line, so that newer backups of the old one do not count any more.
     */
    static List<Step> steps(Path backup, Path data, Instant now) throws IOException {
        BackupList list = BackupList.read(backup);
        Path aside = Backup.free(data.resolve(Backup.SET_ASIDE + Backup.NAME.format(now)));
        List<String> beside = new ArrayList<>(Backup.BESIDE);
        if (keepsItsCode(data)) {
            beside.remove(JOIN_CODE);
        }
        List<String> old = new ArrayList<>(List.of(Journal.FILE));
        old.addAll(beside);
        old.add(Database.file(data, ActStore.DATABASE).getFileName().toString());
        old.add(LeftOpen.file(data).getFileName().toString()); // else a start would take it for what was put back
        List<Step> steps = new ArrayList<>();
        steps.add(() -> FolderMark.read(data).write(data));
        steps.add(() -> copyAside(backup, data, Journal.FILE));
        beside.forEach(file -> steps.add(() -> copyAside(backup, data, file)));
        steps.add(() -> OwnerOnly.makeFolder(aside));
        old.forEach(file -> steps.add(() -> moveIfThere(data.resolve(file), aside.resolve(file))));
        beside.forEach(file -> steps.add(() -> moveIfThere(data.resolve(file + Backup.PART), data.resolve(file))));
        steps.add(() -> new FolderMark(list.folder(), FolderMark.newId(), list.records(), list.head()).write(data));
        steps.add(() -> moveIfThere(data.resolve(Journal.FILE + Backup.PART), data.resolve(Journal.FILE)));
        return steps;
    }

    /** A code that the coach has replaced since must not open the door again. */
    private static boolean keepsItsCode(Path data) throws IOException {
        Path code = data.resolve(JOIN_CODE);
        return Files.exists(code) && BackupCheck.hasItsForm(code);
    }

    private static void copyAside(Path backup, Path data, String file) throws IOException {
        Path to = data.resolve(file + Backup.PART);
        Files.deleteIfExists(to);
        if (Files.exists(backup.resolve(file))) {
            Backup.force(Files.copy(backup.resolve(file), to));
        }
    }

    private static void moveIfThere(Path from, Path to) throws IOException {
        if (Files.exists(from)) {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
            WholeFile.forceDirectoryOf(to);
        }
    }
}
