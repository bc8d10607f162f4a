package org.skeinday.exchange;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** Who confirmed the numbers of one row: one name for all, else a place for each, empty where nobody is named. */
final class ConfirmedNames {
    private static final String BETWEEN = " | ";

    private ConfirmedNames() {}

    /** @param names of each confirmed number in the order of the row; a bar in a name is doubled */
    static String text(List<String> names) {
        List<String> different = names.stream().distinct().toList();
        return (different.size() == 1 ? different : names)
                .stream().map(name -> name.replace("|", "||")).collect(Collectors.joining(BETWEEN));
    }

    /** @param confirmed how many numbers are; a text that has no place for each, and none too many, is one name */
    static List<String> parse(String text, long confirmed) {
        if (confirmed == 1) {
            return List.of(text.replace("||", "|"));
        }
        return Arrays.stream(text.split("(?<![|])[|](?![|])", -1))
                .map(name -> name.strip().replace("||", "|"))
                .toList();
    }
}
