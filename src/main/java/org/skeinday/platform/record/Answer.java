package org.skeinday.platform.record;

import java.util.Map;

/** What the writer answers to an act. */
public sealed interface Answer {
    /** Forced to disk as line n of the journal. */
    record Saved(long n, String actId) implements Answer {}

    /** The rule said no; nothing was recorded, the act may be sent again corrected. */
    record Refused(String reason, Map<String, String> fields) implements Answer {}

    /** What the act is about does not exist; nothing was recorded. */
    record Unknown(String reason) implements Answer {}

    /** This id was used before for something else, or what the form was about has changed since: which, in words. */
    record Conflict(String reason) implements Answer {}

    /** Not decided yet (busy, behind, stopping): repeat with the same id, or ask what became of it. @param reason a sentence */
    record NotYet(String reason) implements Answer {}

    /** The disk takes no more: nothing was recorded. */
    record DiskFull(String reason) implements Answer {}
}
