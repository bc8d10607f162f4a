package org.skeinday.audit;

import java.util.Locale;

/** What a change is a change of. */
public enum AuditTopic {
    RULES,
    WINDOWS,
    ENTRIES,
    RIGHTS,
    RESULTS,
    SIGNATURES;

    /** As people say it, and as addresses have it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
