package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.List;

/**
 * Who has signed a closed attempt, and who must.
 *
 * @param needed in order: each watch whose reading counts, then the captain
 * @param given since the attempt was closed last
 */
public record Signatures(List<String> needed, List<AttemptSigned> given) {

    /** @param slots of the watches that the result was made of */
    public static Signatures of(List<Integer> slots, List<AttemptSigned> given) {
        List<String> needed =
                new ArrayList<>(slots.stream().map(AttemptSigned::watch).toList());
        needed.add(AttemptSigned.CAPTAIN);
        return new Signatures(needed, given);
    }

    public boolean has(String as) {
        return given.stream().anyMatch(s -> s.signedAs().equals(as));
    }

    public List<String> missing() {
        return needed.stream().filter(as -> !has(as)).toList();
    }

    /** Signed by all: the result changes only after a recorded re-opening. */
    public boolean areComplete() {
        return missing().isEmpty();
    }

    /** In words, for example {@code signed}, or {@code signed by watch 1; to sign: captain}. */
    public String words() {
        if (areComplete()) {
            return "signed by all";
        }
        String to = "to sign: " + String.join(", ", missing()).replace("watch-", "watch ");
        List<String> by = needed.stream().filter(this::has).toList();
        return by.isEmpty() ? to : "signed by " + String.join(", ", by).replace("watch-", "watch ") + "; " + to;
    }
}
