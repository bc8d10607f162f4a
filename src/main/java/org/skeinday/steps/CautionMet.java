package org.skeinday.steps;

import org.skeinday.units.Preconditions;

/**
 * Fact {@code caution.met}: a person had a caution's full text in front of them.
 *
 * @param day ISO date in the hall, for example 2026-11-28
 * @param atMs by the server's clock, epoch ms
 */
public record CautionMet(String id, String personId, String day, String cautionId, long atMs) {
    public CautionMet {
        Preconditions.filled("The person", personId);
        Preconditions.filled("The day", day);
        Preconditions.filled("The caution", cautionId);
    }
}
