package org.skeinday.exchange;

/**
 * Whether some cell of a sheet claims to stand beyond the last column that a workbook can have (XFD, ECMA-376): its reader
 * would make room for all columns before it, gigabytes of them, before anybody can count.
 */
final class CellReach {
    private static final byte[] BEFORE = {' ', 'r', '=', '"'};
    private static final int MOST_LETTERS = 3;

    private int matched;
    private int letters;
    private boolean tooFar;

    /** @param some the next bytes of the sheet, of which {@code n} count */
    void look(byte[] some, int n) {
        for (int i = 0; i < n && !tooFar; i++) {
            byte b = some[i];
            if (matched == BEFORE.length) {
                letters = b >= 'A' && b <= 'Z' ? letters + 1 : 0;
                tooFar = letters > MOST_LETTERS;
                matched = letters == 0 ? 0 : matched;
            } else {
                matched = b == BEFORE[matched] ? matched + 1 : b == BEFORE[0] ? 1 : 0;
            }
        }
    }

    boolean isTooFar() {
        return tooFar;
    }
}
