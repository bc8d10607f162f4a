package org.skeinday.attempt;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.units.Preconditions;

/**
 * How often a model touched something on its flight, 0 to 9999, where nothing but the number was told. The record keeps
 * it as a text, since on cards and in files people write of contacts whatever they saw.
 */
public record Contacts(int count) {
    private static final int MOST = 9999;
    private static final String NONE = "none";
    private static final Pattern COUNTED = Pattern.compile("(\\d{1,4}) contacts?");

    public Contacts {
        Preconditions.within("The number of contacts", count, 0, MOST);
    }

    /** As the record has them. */
    public String words() {
        return count == 0 ? NONE : count + (count == 1 ? " contact" : " contacts");
    }

    /** Empty for a text that says something else than {@link #words}. */
    public static Optional<Contacts> parse(String text) {
        if (text.equals(NONE)) {
            return Optional.of(new Contacts(0));
        }
        Matcher counted = COUNTED.matcher(text);
        return counted.matches() ? Optional.of(new Contacts(Integer.parseInt(counted.group(1)))) : Optional.empty();
    }
}
