package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.List;

/**
 * What is wrong in a file, where, and what would be right.
 *
 * @param line 1 is the header; 0 for the whole file or folder
 * @param column the column's word, empty for the whole line
 * @param right what to write or do instead
 */
public record CellError(String file, int line, String column, String wrong, String right) {
    /** More of them nobody reads: they mostly are one slip all over. */
    private static final int MOST_TOLD = 20;

    /** The first ones as texts, and how many more there are. */
    public static List<String> told(List<CellError> errors) {
        List<String> told = new ArrayList<>(
                errors.stream().limit(MOST_TOLD).map(CellError::text).toList());
        int more = errors.size() - MOST_TOLD;
        if (more > 0) {
            told.add("and " + more + " more");
        }
        return told;
    }

    /** Splits what a value said when it refused a text: "what is wrong; what would be right". */
    static CellError said(String file, int line, String column, String message) {
        int at = message.lastIndexOf("; ");
        return at < 0
                ? new CellError(file, line, column, message, "correct it")
                : new CellError(file, line, column, message.substring(0, at), message.substring(at + 2));
    }

    /** The same beside a field: what is right in a file (to leave a line out) is not right in a form. */
    public String inForm() {
        if (right.equals(Row.FILL_IN)) {
            return "Needed: type it in.";
        }
        String better = right.startsWith("leave this line out")
                ? "choose another, or change that one"
                : right.replace(" in terms.csv", " of the event")
                        .replaceAll("write one that entries\\.csv.*", "choose one of its entries");
        String both = wrong + "; " + better + ".";
        return Character.toUpperCase(both.charAt(0)) + both.substring(1);
    }

    /** The same said of a workbook's sheet or a bundle's table. */
    public CellError inside(String name) {
        return file.endsWith(".csv")
                ? new CellError(name + ", " + file.substring(0, file.length() - 4), line, column, wrong, right)
                : this;
    }

    public String text() {
        String where = line == 0 ? file : file + " line " + line;
        return where + (column.isEmpty() ? ": " : ", column \"" + column + "\": ") + wrong + "; " + right;
    }
}
