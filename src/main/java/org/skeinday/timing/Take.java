package org.skeinday.timing;

/** Which time of several watches is taken. */
public enum Take {
    MIDDLE("middle"),
    MEAN("mean"),
    LONGER("longer"),
    SHORTER("shorter");

    private final String word;

    Take(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
