package org.skeinday.platform.record;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/** Reads a journal, checking the chain. */
final class JournalReader {
    /**
     * Where a journal ends.
     *
     * @param n number of whole lines
     * @param hash of the last of them, empty when there is none
     * @param length bytes up to and including the last whole line
     * @param torn bytes after it: a line that was being written when the power went
     */
    record End(long n, String hash, long length, int torn) {
        static final End NOTHING = new End(0, "", 0, 0);
    }

    /** Hears every line, in order. Reading what a line says takes ten times as long as checking that it is the one. */
    interface Lines {
        /** Whether it needs to know what line {@code n} says. @param line its bytes, without the line end */
        boolean wants(long n, byte[] line);

        /** Each line, once it is checked. */
        void passed(long n, String hash);

        /** What it says, after {@link #passed}: each line that it wants, and others that somebody else wants. */
        void line(JournalLine line);

        /**
         * There are no more than these.
         *
         * @throws Damaged when that is not what there must be
         */
        void end(long n) throws IOException;
    }

    private final Lines lines;
    private byte[] bytes = new byte[1 << 16];
    private int filled;
    private long n;
    private String prev;
    private long length;

    private JournalReader(Lines lines, End start) {
        this.lines = lines;
        this.n = start.n();
        this.prev = start.hash();
        this.length = start.length();
    }

    /**
     * Checks the chain from the first line to the last.
     *
     * @throws Damaged at the first line that is not what was written
     */
    static End check(Path file) throws IOException {
        return read(file, new LinesTogether());
    }

    /**
     * Hands every whole line to {@code lines}, in order.
     *
     * @throws Damaged at the first line that is not what was written
     */
    static End read(Path file, Lines lines) throws IOException {
        return read(file, End.NOTHING, Long.MAX_VALUE, lines);
    }

    /**
     * The same from the line after {@code start}, and no further than {@code until} bytes into the file: more may just be
     * on its way.
     */
    static End read(Path file, End start, long until, Lines lines) throws IOException {
        var reader = new JournalReader(lines, start);
        try (InputStream in = Files.newInputStream(file)) {
            in.skipNBytes(start.length());
            long left = until - start.length();
            while (left > 0) {
                int got = in.read(reader.bytes, reader.filled, (int) Math.min(left, reader.free()));
                if (got < 0) {
                    break;
                }
                left -= got;
                reader.take(got);
            }
        }
        lines.end(reader.n);
        return new End(reader.n, reader.prev, reader.length, reader.filled);
    }

    private int free() {
        return bytes.length - filled;
    }

    private void take(int got) {
        int from = 0;
        for (int i = filled; i < filled + got; i++) {
            if (bytes[i] == '\n') {
                line(Arrays.copyOfRange(bytes, from, i));
                from = i + 1;
            }
        }
        filled = filled + got - from;
        System.arraycopy(bytes, from, bytes, 0, filled);
        if (free() == 0) {
            bytes = Arrays.copyOf(bytes, 2 * bytes.length);
        }
    }

    private void line(byte[] line) {
        JournalLine read = lines.wants(n + 1, line) ? JournalLine.read(line, n + 1, prev) : null;
        prev = read == null ? JournalLine.check(line, n + 1, prev) : read.hash();
        n++;
        length += line.length + 1L;
        lines.passed(n, prev);
        if (read != null) {
            lines.line(read);
        }
    }
}
