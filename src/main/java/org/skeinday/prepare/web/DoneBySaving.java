package org.skeinday.prepare.web;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What saving a row did beside it, in words, until the list to which a form goes on has said it. Not of the record: after a
 * new start nothing is said.
 */
final class DoneBySaving {
    /** So many forms are on their way to their lists at once at most. */
    private static final int MOST = 32;

    private final Map<String, String> words = new LinkedHashMap<>();

    /** @param row id @param did empty for nothing */
    synchronized void say(String row, String did) {
        words.remove(row);
        if (!did.isEmpty()) {
            words.put(row, did);
        }
        if (words.size() > MOST) {
            words.remove(words.keySet().iterator().next());
        }
    }

    /** Empty when there is nothing to be said, or it was said. */
    synchronized String take(String row) {
        String did = words.remove(row);
        return did == null ? "" : did;
    }
}
