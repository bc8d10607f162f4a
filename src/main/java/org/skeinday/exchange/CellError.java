package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.skeinday.units.Misread;
import org.skeinday.units.Sentence;

/**
 * What is wrong in a file, where, and what would be right.
 *
 * @param line 1 is the header; 0 for the whole file or folder
 * @param column the column's word, empty for the whole line
 * @param right what to write or do instead
 * @param inForm the same beside a field, as a sentence: what is right in a file (to leave a line out) is not right there
 */
public record CellError(String file, int line, String column, String wrong, String right, String inForm) {
    /** More of them nobody reads: they mostly are one slip all over. */
    private static final int MOST_TOLD = 20;

    /** One whose words are right in a file and in a form. */
    CellError(String file, int line, String column, String wrong, String right) {
        this(file, line, column, wrong, right, sentence(wrong, right));
    }

    /** An empty cell that every row fills in. */
    static CellError empty(String file, int line, String column) {
        return new CellError(file, line, column, "this is empty", "fill it in on every row", "Needed: type it in.");
    }

    /** The same with what else would be right in a form. */
    CellError orInForm(String rightInForm) {
        return new CellError(file, line, column, wrong, right, sentence(wrong, rightInForm));
    }

    private static String sentence(String wrong, String right) {
        String both = wrong + "; " + right + ".";
        return Sentence.begin(both);
    }

    /** The first ones as texts, and how many more there are. */
    public static List<String> told(List<CellError> errors) {
        return told(errors, CellError::text);
    }

    /** The same of what is said otherwise. @param text what is wrong, where, and what would be right */
    public static <E> List<String> told(List<E> errors, Function<E, String> text) {
        List<String> told =
                new ArrayList<>(errors.stream().limit(MOST_TOLD).map(text).toList());
        int more = errors.size() - MOST_TOLD;
        if (more > 0) {
            told.add("and " + more + " more");
        }
        return told;
    }

    /** What a value said when it refused a text. */
    static CellError said(String file, int line, String column, IllegalArgumentException refusal) {
        return refusal instanceof Misread misread
                ? new CellError(file, line, column, misread.wrong(), misread.right())
                : new CellError(file, line, column, String.valueOf(refusal.getMessage()), "correct it");
    }

    /** The same said of a workbook's sheet or a bundle's table. */
    public CellError inside(String name) {
        return file.endsWith(".csv")
                ? new CellError(name + ", " + file.substring(0, file.length() - 4), line, column, wrong, right, inForm)
                : this;
    }

    public String text() {
        String where = line == 0 ? file : file + " line " + line;
        return where + (column.isEmpty() ? ": " : ", column \"" + column + "\": ") + wrong + "; " + right;
    }
}
