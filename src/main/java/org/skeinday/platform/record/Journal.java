package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

/** The record: an append-only file of hash-chained lines. Used by the writer thread alone. */
final class Journal implements AutoCloseable {
    static final String FILE = "journal.jsonl";

    private final Path path;
    private final JournalFile file;
    private long n;
    private String head;
    private long goodLength;

    private Journal(Path path, JournalFile file, JournalReader.End end) {
        this.path = path;
        this.file = file;
        this.n = end.n();
        this.head = end.hash();
        this.goodLength = end.length();
    }

    /**
     * Opens the journal for appending, handing each line that is in it to {@code each}. A torn last line is cut; a copy
     * of it is kept beside.
     */
    static Journal open(Path folder, JournalFile.Opener opener, Consumer<JournalLine> each) throws IOException {
        Path path = folder.resolve(FILE);
        if (!Files.exists(path)) {
            OwnerOnly.create(path).close();
            WholeFile.forceDirectoryOf(path); // before its first line is called saved
        }
        JournalReader.End end = JournalReader.read(path, each);
        JournalFile file = opener.open(path);
        if (end.torn() > 0) {
            keepTorn(path, end);
            file.truncate(end.length());
            file.force();
        }
        return new Journal(path, file, end);
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
