package org.skeinday;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** An entry that a device keeps is shown in words, whatever its kind: each that may come as a tap has its own. */
class TapWordsTest {
    private static final Pattern NAMED = Pattern.compile("^  '([a-z-]+\\.[a-z-]+)': '[A-Z][^']+',$", Pattern.MULTILINE);

    @Test
    void each_kind_of_tap_has_its_words_and_no_other_has() throws IOException {
        try (var in = Objects.requireNonNull(TapWordsTest.class.getResourceAsStream("/static/js/tapwords.js"))) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            var named = new TreeSet<String>();
            NAMED.matcher(text).results().forEach(found -> named.add(found.group(1)));
            assertEquals(new TreeSet<>(TapTable.rights().keySet()), named);
        }
    }
}
