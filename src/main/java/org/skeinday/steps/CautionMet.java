package org.skeinday.steps;

/**
 * Fact {@code caution.met}: a person had a caution's full text in front of them.
 *
 * @param day ISO date in the hall, for example 2026-11-28
 * @param atMs by the server's clock, epoch ms
 */
public record CautionMet(String id, String personId, String day, String cautionId, long atMs) {
    public CautionMet {
        Must.beFilled("The person", personId);
        Must.beFilled("The day", day);
        Must.beFilled("The caution", cautionId);
    }
}
