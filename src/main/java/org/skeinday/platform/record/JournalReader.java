package org.skeinday.platform.record;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;

/** Reads a journal from its first line, checking the chain. */
final class JournalReader {
    /**
     * Where a journal ends.
     *
     * @param n number of whole lines
     * @param hash of the last of them, empty when there is none
     * @param length bytes up to and including the last whole line
     * @param torn bytes after it: a line that was being written when the power went
     */
    record End(long n, String hash, long length, int torn) {}

    private JournalReader() {}

    /**
     * Hands every whole line to {@code each}, in order.
     *
     * @throws Damaged at the first line that is not what was written
     */
    static End read(Path file, Consumer<JournalLine> each) throws IOException {
        long n = 0;
        long length = 0;
        String prev = "";
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16)) {
            var bytes = new ByteArrayOutputStream(4096);
            for (int b = in.read(); b >= 0; b = in.read()) {
                if (b != '\n') {
                    bytes.write(b);
                    continue;
                }
                JournalLine line = JournalLine.read(bytes.toByteArray(), n + 1, prev);
                n = line.n();
                prev = line.hash();
                length += bytes.size() + 1L;
                bytes.reset();
                each.accept(line);
            }
            return new End(n, prev, length, bytes.size());
        }
    }
}
