package org.skeinday;

import java.util.Map;
import org.skeinday.platform.http.Role;

/** What may come as a tap, and from which role on. */
public final class TapTable {
    private TapTable() {}

    public static Map<String, Role> rights() {
        return Catalogue.TAPS;
    }
}
