package org.skeinday.exchange;

/**
 * What is wrong in a file, where, and what would be right.
 *
 * @param line 1 is the header; 0 for the whole file or folder
 * @param column the column's word, empty for the whole line
 * @param right what to write or do instead
 */
public record CellError(String file, int line, String column, String wrong, String right) {
    /** Splits what a value said when it refused a text: "what is wrong; what would be right". */
    static CellError said(String file, int line, String column, String message) {
        int at = message.lastIndexOf("; ");
        return at < 0
                ? new CellError(file, line, column, message, "correct it")
                : new CellError(file, line, column, message.substring(0, at), message.substring(at + 2));
    }

    public String text() {
        String where = line == 0 ? file : file + " line " + line;
        return where + (column.isEmpty() ? ": " : ", column \"" + column + "\": ") + wrong + "; " + right;
    }
}
