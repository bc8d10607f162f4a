package org.skeinday.platform.record;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What may be typed: any writing of the world, tabs and line ends. Other control characters fit no file and no paper; signs
 * that turn the direction of writing around (U+202A to U+202E, U+2066 to U+2069) make a page say what nobody wrote.
 */
public final class PlainText {
    private static final Pattern STRANGE = Pattern.compile("[\\p{Cc}&&[^\\t\\n\\r]]|[\\u202A-\\u202E\\u2066-\\u2069]"
            + "|[\\uFFFE\\uFFFF]|[\\uD800-\\uDBFF](?![\\uDC00-\\uDFFF])|(?<![\\uD800-\\uDBFF])[\\uDC00-\\uDFFF]");

    private PlainText() {}

    /** Why this cannot be kept, in words; empty when it can. */
    public static Optional<String> whyNot(String text) {
        Matcher strange = STRANGE.matcher(text);
        return strange.find()
                ? Optional.of(String.format(
                        "What was typed holds a sign that cannot be seen or printed (U+%04X): type it without",
                        (int) text.charAt(strange.start())))
                : Optional.empty();
    }

    /** The same for every text within. */
    public static Optional<String> whyNot(JsonNode content) {
        if (content.isTextual()) {
            return whyNot(content.textValue());
        }
        for (JsonNode part : content) {
            Optional<String> no = whyNot(part);
            if (no.isPresent()) {
                return no;
            }
        }
        return Optional.empty();
    }
}
