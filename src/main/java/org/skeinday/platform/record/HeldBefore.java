package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

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
        held.neverEmpty = mark.line().isEmpty() && BackupList.anyWithRecords(place);
        return held;
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
        List<Path> backups = Backup.in(data.resolve(Backup.FOLDER));
        String newest =
                backups.isEmpty() ? "BACKUP" : backups.get(backups.size() - 1).toString();
        return "Put the newest backup back, what is there is set aside: restore " + newest + " --data " + data;
    }
}
