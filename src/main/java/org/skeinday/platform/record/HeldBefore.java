package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a journal held before, by its folder's mark and by the newest backup of its line: it never holds less. */
final class HeldBefore implements JournalReader.Lines {
    private final Path data;
    private final List<Claim> open = new ArrayList<>();
    private boolean neverEmpty; // by backups of an older program, which do not say whose they are

    /** @param by who says so, in words @param n lines it had then @param head the hash of the last of them */
    private record Claim(String by, long n, String head) {}

    private HeldBefore(Path data) {
        this.data = data;
    }

    /** For a start: the mark, and the backups in the folder. */
    static HeldBefore of(Path data) throws IOException {
        FolderMark mark = FolderMark.read(data);
        HeldBefore held = in(data.resolve(Backup.FOLDER), data);
        held.claim("the folder's own mark", mark.records(), mark.head());
        return held;
    }

    /** For a backup: the one before it in the same place. */
    static HeldBefore in(Path place, Path data) throws IOException {
        var held = new HeldBefore(data);
        FolderMark mark = FolderMark.read(data);
        BackupList.newestOf(place, mark)
                .ifPresent(newest -> held.claim("the backup " + newest.backup(), newest.records(), newest.head()));
        if (mark.line().isEmpty()) {
            held.claimWithoutMark(place);
        }
        return held;
    }

    /** Of a folder of before there were marks, or one whose mark is gone: its own backups tell as much. */
    private void claimWithoutMark(Path place) throws IOException {
        neverEmpty = BackupList.anyWithRecords(place);
        if (absolute(place).equals(absolute(data.resolve(Backup.FOLDER)))) { // elsewhere they may be of any folder
            BackupList.newestSinceRestore(data)
                    .ifPresent(newest -> claim("the backup " + newest.backup(), newest.records(), newest.head()));
        }
    }

    private static Path absolute(Path path) {
        return path.toAbsolutePath().normalize();
    }

    private void claim(String by, long n, String head) {
        if (n > 0) {
            open.add(new Claim(by, n, head));
        }
    }

    @Override
    public boolean wants(long n, byte[] line) {
        return false;
    }

    @Override
    public void passed(long n, String hash) {
        open.removeIf(claim -> claim.n() == n && claim.head().equals(hash));
    }

    @Override
    public void line(JournalLine line) {}

    /** @throws Damaged when the journal, read to its end, lacks what it had */
    @Override
    public void end(long n) throws IOException {
        if (n == 0 && neverEmpty) {
            throw new Damaged("record 1: the journal is empty, but its backups have records. " + wayOut());
        }
        if (open.isEmpty()) {
            return;
        }
        Claim lost = open.get(0);
        String what = lost.n() > n
                ? "record " + (n + 1) + ": the journal was cut: " + lost.by() + " knows " + lost.n()
                        + " records, the journal has " + n + ". "
                : "record " + lost.n() + ": the journal is not the one of this folder: " + lost.by()
                        + " knows another record " + lost.n() + ". ";
        throw new Damaged(what + wayOut());
    }

    private String wayOut() throws IOException {
        FolderMark mark = FolderMark.read(data);
        Optional<Path> newest = mark.line().isEmpty()
                ? BackupList.newestSinceRestore(data).map(BackupList::backup)
                : Backup.newest(data, data.resolve(Backup.FOLDER));
        return "Put the newest backup back, what is there is set aside: restore "
                + newest.map(Path::toString).orElse("BACKUP") + " --data " + data;
    }
}
