package org.skeinday.exchange;

/**
 * Characters of a workbook's cells. A workbook keeps a text once and names it from many cells: a small file can hold one
 * long text that would be copied hundreds of thousands of times.
 */
final class CellLengths {
    /** What no remark and no name reaches (own default). */
    static final int MOST_OF_ONE = 10_000;

    /** As much as the whole file may unfold to, in characters. */
    static final long MOST = 64_000_000;

    static final String LIMITS =
            "at most " + MOST_OF_ONE + " characters in a cell and " + MOST / 1_000_000 + " million in all are read";

    private long all;

    /** Counts the text of one more cell. */
    boolean areTooMuchWith(String text) {
        all += text.length();
        return text.length() > MOST_OF_ONE || all > MOST;
    }
}
