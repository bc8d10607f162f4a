package org.skeinday.units;

/**
 * What was typed cannot be read. It keeps what is wrong and what would be right apart, so that whoever shows them, in a
 * line of a file or beside a field, need not take a sentence apart.
 */
public final class Misread extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    private final String wrong;
    private final String right;

    /**
     * @param wrong with what was typed, as the begin of a sentence
     * @param right what to write instead, as its end
     */
    public Misread(String wrong, String right) {
        super(wrong + "; " + right);
        this.wrong = wrong;
        this.right = right;
    }

    public String wrong() {
        return wrong;
    }

    public String right() {
        return right;
    }
}
