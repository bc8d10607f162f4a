package org.skeinday.bench.web;

import java.util.List;
import java.util.stream.Collectors;
import org.skeinday.platform.http.FormErrors;

/** Which counts of a wind stand as the form proposed them, unless somebody ticked that they were counted. */
final class OfferedTurns {
    private static final List<String> FIELDS = List.of("atFull", "stop", "backOff");

    private OfferedTurns() {}

    /** Names of fields, parted by spaces. */
    static String of(FormErrors typed) {
        return typed.typed("so").equals("yes")
                ? ""
                : FIELDS.stream()
                        .filter(field -> !typed.typed("offered-" + field).isBlank()
                                && typed.typed("offered-" + field)
                                        .strip()
                                        .equals(typed.typed(field).strip()))
                        .collect(Collectors.joining(" "));
    }
}
