package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Who has signed a closed attempt, and who must.
 *
 * @param needed in order: each watch whose reading counts, then the captain
 * @param given since the attempt was closed last
 */
public record Signatures(List<Signer> needed, List<AttemptSigned> given) {

    /**
     * Who signs.
     *
     * @param as the record's word, such as {@code watch-1}
     * @param words for people, such as {@code watch 1}
     */
    public record Signer(String as, String words) {}

    /** @param slots of the watches that the result was made of */
    public static Signatures of(List<Integer> slots, List<AttemptSigned> given) {
        List<Signer> needed = new ArrayList<>();
        slots.forEach(slot -> needed.add(new Signer(AttemptSigned.watch(slot), "watch " + slot)));
        needed.add(new Signer(AttemptSigned.CAPTAIN, AttemptSigned.CAPTAIN));
        return new Signatures(needed, given);
    }

    public boolean has(String as) {
        return given.stream().anyMatch(s -> s.signedAs().equals(as));
    }

    public List<Signer> missing() {
        return needed.stream().filter(signer -> !has(signer.as())).toList();
    }

    /** Whether this one must sign and has not. @param as the record's word */
    public boolean lacks(String as) {
        return missing().stream().anyMatch(signer -> signer.as().equals(as));
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
        String to = "to sign: " + words(missing());
        List<Signer> by = needed.stream().filter(signer -> has(signer.as())).toList();
        return by.isEmpty() ? to : "signed by " + words(by) + "; " + to;
    }

    private static String words(List<Signer> signers) {
        return signers.stream().map(Signer::words).collect(Collectors.joining(", "));
    }
}
