package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * A copy of the record in a folder of its own: the journal up to its last whole line with its chain checked, the people,
 * and what devices need to find the server again. The database is none of it: it is built from the journal.
 */
public final class Backup {
    /** Where they are made in a data folder when nobody names a place. */
    public static final String FOLDER = "backups";

    /** Automatic ones beyond the newest so many are removed. */
    public static final int KEPT = 20;

    /** Begins the name of a folder in which a restore keeps what was there. */
    static final String SET_ASIDE = "set-aside-";

    private static final String PREFIX = "backup-";
    static final String PART = ".part";
    /** Beside the journal: people, the folder's form, and where devices found the server, so that their links go on. */
    static final List<String> BESIDE = List.of(People.FILE, Format.FILE, "join-code", "port");

    static final DateTimeFormatter NAME =
            DateTimeFormatter.ofPattern("uuuuMMdd-HHmmss").withZone(ZoneOffset.UTC);

    /** @param records whole lines of the journal @param head hash of the last, empty when there is none */
    public record Made(Path folder, long records, String head) {}

    private Backup() {}

    /**
     * Copies the record while the program goes on with it.
     *
     * @param place in which the backup's folder is made
     * @throws Damaged when the journal is not whole: such a copy is not kept
     * @throws IOException when it cannot be written; nothing half made is left under a backup's name
     */
    public static Made make(Path data, Path place, Instant now) throws IOException {
        Files.createDirectories(place);
        Path target = free(place.resolve(PREFIX + NAME.format(now)));
        Path part = target.resolveSibling(target.getFileName() + PART);
        remove(part);
        OwnerOnly.makeFolder(part);
        try {
            BackupList list = copied(data, part, HeldBefore.in(place, data));
            list.write(now);
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
            WholeFile.forceDirectoryOf(target);
            return new Made(target, list.records(), list.head());
        } catch (IOException | RuntimeException e) {
            remove(part);
            throw e;
        }
    }

    /** @throws Damaged when the record or its people are not whole, or lost something since the backup before */
    private static BackupList copied(Path data, Path part, HeldBefore before) throws IOException {
        FolderMark mark = FolderMark.read(data);
        Path journal = part.resolve(Journal.FILE);
        Files.copy(data.resolve(Journal.FILE), journal);
        var people = new PeopleOfJournal();
        JournalReader.End end = JournalReader.read(journal, new LinesTogether(before, people));
        cut(journal, end.length());
        Map<String, String> sums = new TreeMap<>();
        for (String file : BESIDE) {
            if (Files.exists(data.resolve(file)) && BackupCheck.hasItsForm(data.resolve(file))) {
                force(Files.copy(data.resolve(file), part.resolve(file)));
                sums.put(file, Sha.ofFile(part.resolve(file)));
            }
        }
        sums.put(Journal.FILE, Sha.ofFile(journal));
        BackupCheck.people(part, mark.folder(), people);
        return new BackupList(part, end.n(), end.hash(), mark.folder(), mark.line(), sums);
    }

    /**
     * The same, unless the newest one in this place is whole and holds the same record and people.
     *
     * @return the newest one where nothing has changed, else the new one
     */
    public static Made makeIfChanged(Path data, Path place, Instant now) throws IOException {
        Optional<Path> last = newest(data, place);
        if (last.isPresent()) {
            Path newest = last.get();
            JournalReader.End end = JournalReader.check(data.resolve(Journal.FILE));
            if (isOf(end, newest) && sameFile(data.resolve(People.FILE), newest.resolve(People.FILE))) {
                return new Made(newest, end.n(), end.hash());
            }
        }
        return make(data, place, now);
    }

    /** Whether this backup can be read and ends where the journal does: a broken one is no reason to make none. */
    private static boolean isOf(JournalReader.End end, Path backup) throws IOException {
        try {
            Made made = BackupCheck.check(backup);
            return made.records() == end.n() && made.head().equals(end.hash());
        } catch (Damaged e) {
            return false;
        }
    }

    private static boolean sameFile(Path one, Path other) throws IOException {
        return Files.exists(one) == Files.exists(other) && (!Files.exists(one) || Files.mismatch(one, other) < 0);
    }

    static Path free(Path wished) {
        Path free = wished;
        for (int i = 2; Files.exists(free); i++) {
            free = wished.resolveSibling(wished.getFileName() + "-" + i);
        }
        return free;
    }

    private static void cut(Path file, long length) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.truncate(length);
            channel.force(true);
        }
    }

    static void force(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    /** The newest in a place, as this folder's record has it; empty where there is none. */
    public static Optional<Path> newest(Path data, Path place) throws IOException {
        List<Path> all = BackupList.inOrder(place, FolderMark.read(data));
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
    }

    /** The name that a backup would have that was made when one was last put back; empty when that never was. */
    static String lastSetAside(Path data) throws IOException {
        try (Stream<Path> there = Files.list(data)) {
            return there.map(path -> path.getFileName().toString())
                    .filter(name -> name.startsWith(SET_ASIDE))
                    .max(Comparator.naturalOrder())
                    .map(name -> PREFIX + name.substring(SET_ASIDE.length()))
                    .orElse("");
        }
    }

    /** The backups in a place by the clock, the oldest first. */
    static List<Path> in(Path place) throws IOException {
        if (!Files.isDirectory(place)) {
            return List.of();
        }
        try (Stream<Path> there = Files.list(place)) {
            return there.filter(Files::isDirectory)
                    .filter(p -> p.getFileName().toString().startsWith(PREFIX)
                            && !p.getFileName().toString().endsWith(PART))
                    .sorted(Comparator.comparing(p -> p.getFileName().toString()))
                    .toList();
        }
    }

    /**
     * Removes the oldest of this folder beyond {@link #KEPT}, and what a kill has left half made: names would stand in it
     * for ever. Those of another folder in the same place are left to it.
     */
    public static void prune(Path data, Path place) throws IOException {
        FolderMark mark = FolderMark.read(data);
        List<Path> all = new ArrayList<>();
        for (Path backup : BackupList.inOrder(place, mark)) {
            if (!BackupList.isOfOther(backup, mark)) {
                all.add(backup);
            }
        }
        for (Path old : all.subList(0, Math.max(0, all.size() - KEPT))) {
            remove(old);
        }
        String newest = all.stream()
                .map(path -> path.getFileName().toString())
                .max(Comparator.naturalOrder())
                .orElse("");
        try (Stream<Path> there = Files.list(place)) {
            for (Path part : there.filter(Files::isDirectory).toList()) {
                String name = part.getFileName().toString();
                if (name.startsWith(PREFIX) && name.endsWith(PART) && name.compareTo(newest) < 0) {
                    remove(part); // a later one may be in the making
                }
            }
        }
    }

    /** Only files that a backup has: whatever else somebody put there stays, and with it the folder. */
    private static void remove(Path backup) throws IOException {
        if (!Files.isDirectory(backup)) {
            return;
        }
        List<String> own = new ArrayList<>(BESIDE);
        own.add(Journal.FILE);
        own.add(BackupList.FILE);
        own.add(BackupList.FILE + WholeFile.ASIDE);
        for (String file : own) {
            Files.deleteIfExists(backup.resolve(file));
        }
        try (Stream<Path> left = Files.list(backup)) {
            if (left.findAny().isPresent()) {
                return;
            }
        }
        Files.delete(backup);
    }
}
