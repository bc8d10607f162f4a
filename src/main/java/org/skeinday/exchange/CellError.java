package org.skeinday.exchange;

/**
 * What is wrong in a file, where, and what would be right.
 *
 * @param line 1 is the header; 0 for the whole file
 * @param column the header's own word, empty for the whole line
 */
public record CellError(String file, int line, String column, String message) {
    public String text() {
        String where = line == 0 ? file : file + " line " + line;
        return where + (column.isEmpty() ? ": " : ", column \"" + column + "\": ") + message;
    }
}
