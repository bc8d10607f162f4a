package org.skeinday.exchange;

/** What separates the cells of a file: the one of ; tab and comma that the header has most of, outside quotes. */
final class Separator {
    private static final char[] CANDIDATES = {';', '\t', ','};

    private Separator() {}

    static char of(String text) {
        char best = ',';
        int most = 0;
        for (char candidate : CANDIDATES) {
            int count = inHeader(text, candidate);
            if (count > most) {
                best = candidate;
                most = count;
            }
        }
        return best;
    }

    /** Counts in the first line that is not blank; a quoted header may go over several lines. */
    private static int inHeader(String text, char wanted) {
        int count = 0;
        boolean quoted = false;
        for (char c : text.stripLeading().toCharArray()) {
            if (c == '"') {
                quoted = !quoted;
            } else if (!quoted && (c == '\n' || c == '\r')) {
                break;
            } else if (!quoted && c == wanted) {
                count++;
            }
        }
        return count;
    }
}
