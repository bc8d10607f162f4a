package org.skeinday.device.web;

import java.io.IOException;
import java.security.SecureRandom;
import org.skeinday.platform.http.PinHash;
import org.skeinday.platform.record.People;

/** The coach's PIN: six figures, told once when they are made; only their hash is kept. */
public final class CoachPin {
    private static final int PINS = 1_000_000;

    private final People people;
    private final int rounds;
    private final SecureRandom random;

    /** @param rounds of the hash that is kept, as of {@link PinHash#of} */
    public CoachPin(People people, int rounds, SecureRandom random) {
        this.people = people;
        this.rounds = rounds;
        this.random = random;
    }

    public boolean fits(String typed) {
        return PinHash.fits(typed, people.pinHash());
    }

    /** Made at the first start, or where what is kept of it is none; empty where there is one. */
    public String makeFirst() throws IOException {
        return PinHash.isWhole(people.pinHash()) ? "" : makeAnother();
    }

    /** In place of the one that was lost. */
    public String makeAnother() throws IOException {
        String pin = String.format("%06d", random.nextInt(PINS));
        people.keepPin(PinHash.of(pin, rounds, random));
        return pin;
    }

    /** So that the next start makes another, and tells it. */
    public void forget() throws IOException {
        people.keepPin("");
    }
}
