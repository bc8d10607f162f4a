package org.skeinday.hall;

import java.util.List;

/**
 * What a winding place is found to be.
 *
 * @param findings what is too close to what
 * @param unknown what could not be judged, in words
 */
public record Verdict(List<Shortfall> findings, List<String> unknown) {
    public static final Verdict NOTHING_WRONG = new Verdict(List.of(), List.of());

    public Verdict {
        findings = List.copyOf(findings);
        unknown = List.copyOf(unknown);
    }

    /** Whether nothing that was measured is too close; what was not measured is in {@link #unknown}. */
    public boolean isClear() {
        return findings.isEmpty();
    }

    public boolean isComplete() {
        return unknown.isEmpty();
    }

    public boolean has(Rule rule) {
        return findings.stream().anyMatch(f -> f.rule() == rule);
    }

    /** Whether this thing breaks a rule, itself or with a part of it. */
    public boolean blames(String what) {
        return findings.stream().anyMatch(f -> f.what().equals(what));
    }

    /** What is wrong now and was not in {@code before}, or has become worse by a millimetre or more. */
    public List<Shortfall> worseThan(Verdict before) {
        return findings.stream().filter(f -> !before.knew(f)).toList();
    }

    /** What cannot be judged now and could in {@code before}. */
    public List<String> newlyUnknown(Verdict before) {
        return unknown.stream().filter(u -> !before.unknown.contains(u)).toList();
    }

    private boolean knew(Shortfall now) {
        return findings.stream()
                .anyMatch(f -> f.rule() == now.rule()
                        && f.what().equals(now.what())
                        && f.part().equals(now.part())
                        && f.against().equals(now.against())
                        && now.shortBy().millimetres() - f.shortBy().millimetres() < 1 - Separation.SAME_MM);
    }
}
