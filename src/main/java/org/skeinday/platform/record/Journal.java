package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The record: an append-only file of hash-chained lines. Used by the writer thread alone. */
final class Journal implements AutoCloseable {
    static final String FILE = "journal.jsonl";

    private final Path path;
    private final JournalFile file;
    private long n;
    private String head;
    private long goodLength;

    /** Sees all lines before the file is opened for writing. */
    interface Watch {
        void line(JournalLine line);

        /** @throws Damaged when it is not what it must be */
        void end(long n) throws IOException;
    }

    private Journal(Path path, JournalFile file, JournalReader.End end) {
        this.path = path;
        this.file = file;
        this.n = end.n();
        this.head = end.hash();
        this.goodLength = end.length();
    }

    /**
     * Opens the journal for appending, handing each line that is in it to {@code watch}, which may refuse it. A torn last line is cut; a copy
     * of it is kept beside.
     */
    static Journal open(Path folder, JournalFile.Opener opener, Watch watch) throws IOException {
        Path path = folder.resolve(FILE);
        make(folder);
        JournalReader.End end = JournalReader.read(path, watch::line);
        watch.end(end.n());
        JournalFile file = opener.open(path);
        if (end.torn() > 0) {
            keepTorn(path, end);
            file.truncate(end.length());
            file.force();
        }
        return new Journal(path, file, end);
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
        return n;
    }

    String head() {
        return head;
    }

    Path path() {
        return path;
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
        n = last.n();
        head = last.hash();
        goodLength = file.length();
    }

    /** Takes back what was appended and not forced. */
    void takeBack() throws IOException {
        file.truncate(goodLength);
        file.force();
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
