package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The record: an append-only file of hash-chained lines. Used by the writer thread alone, but for {@link #end}. */
final class Journal implements AutoCloseable {
    static final String FILE = "journal.jsonl";

    private final JournalFile file;
    private volatile JournalReader.End end;

    private Journal(JournalFile file, JournalReader.End end) {
        this.file = file;
        this.end = end;
    }

    /**
     * Opens the journal for appending, once {@code each} has heard all that is in it and refused nothing. A torn last
     * line is cut; a copy of it is kept beside.
     */
    static Journal open(Path folder, JournalFile.Opener opener, JournalReader.Lines each) throws IOException {
        Path path = folder.resolve(FILE);
        make(folder);
        JournalReader.End end = JournalReader.read(path, each);
        JournalFile file = opener.open(path);
        if (end.torn() > 0) {
            keepTorn(path, end);
            file.truncate(end.length());
            file.force();
        }
        return new Journal(file, end);
    }

    /** Makes an empty one where there is none, before anything else is made that tells of a used folder. */
    static void make(Path folder) throws IOException {
        Path path = folder.resolve(FILE);
        if (!Files.exists(path)) {
            OwnerOnly.create(path).close();
            WholeFile.forceDirectoryOf(path); // before its first line is called saved
        }
    }

    private static void keepTorn(Path path, JournalReader.End end) throws IOException {
        byte[] all = Files.readAllBytes(path);
        byte[] torn = java.util.Arrays.copyOfRange(all, (int) end.length(), all.length);
        WholeFile.write(path.resolveSibling("torn-after-" + end.n() + ".jsonl"), torn);
    }

    long n() {
        return end.n();
    }

    String head() {
        return end.hash();
    }

    /** The last line that is forced to the disk; for any thread. */
    JournalReader.End end() {
        return end;
    }

    /** Writes the lines after the last one, without forcing them. */
    void append(List<JournalLine> lines) throws IOException {
        var text = new StringBuilder();
        for (JournalLine line : lines) {
            text.append(line.text()).append('\n');
        }
        file.append(text.toString().getBytes(StandardCharsets.UTF_8));
    }

    /** Forces what was appended to disk; from here on it has happened. */
    void force(List<JournalLine> lines) throws IOException {
        file.force();
        JournalLine last = lines.get(lines.size() - 1);
        end = new JournalReader.End(last.n(), last.hash(), file.length(), 0);
    }

    /** Takes back what was appended and not forced. */
    void takeBack() throws IOException {
        file.truncate(end.length());
        file.force();
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
