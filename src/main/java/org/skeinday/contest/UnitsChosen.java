package org.skeinday.contest;

import java.util.List;
import org.skeinday.units.Preconditions;

/** Fact {@code units.chosen}: in what the team writes lengths, once for all its pages, phones and papers. */
public record UnitsChosen(String units) {
    public static final List<String> WORDS = List.of("metric", "inch");

    public UnitsChosen {
        Preconditions.oneOf("The units", units, WORDS);
    }
}
