package org.skeinday.platform.record;

import java.io.IOException;
import java.util.List;

/** Several who hear a journal's lines while it is read once, each line in their order; none where it is only checked. */
final class LinesTogether implements JournalReader.Lines {
    private final List<JournalReader.Lines> all;

    LinesTogether(JournalReader.Lines... all) {
        this.all = List.of(all);
    }

    @Override
    public boolean wants(long n, byte[] line) {
        for (JournalReader.Lines one : all) {
            if (one.wants(n, line)) {
                return true;
            }
        }
        return false;
    }

    @Override
    public void passed(long n, String hash) {
        for (JournalReader.Lines one : all) {
            one.passed(n, hash);
        }
    }

    @Override
    public void line(JournalLine line) {
        for (JournalReader.Lines one : all) {
            one.line(line);
        }
    }

    @Override
    public void end(long n) throws IOException {
        for (JournalReader.Lines one : all) {
            one.end(n);
        }
    }
}
