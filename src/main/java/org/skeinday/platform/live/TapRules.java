package org.skeinday.platform.live;

import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.Role;

/**
 * What may come in as a tap, and from whom.
 *
 * @param kinds kind of act to the least role; every other kind has a form with checks of its own
 * @param ofDevice the device with this id that joined once, ended or not: for entries that come in a file
 */
public record TapRules(Map<String, Role> kinds, Function<String, Optional<Caller>> ofDevice) {
    public TapRules {
        kinds = Map.copyOf(kinds);
    }
}
