package org.skeinday.paper.action;

import java.util.Map;
import java.util.Optional;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.store.AttemptNumbers;
import org.skeinday.contest.EntryAdded;
import org.skeinday.platform.db.Tx;

/** A card carries the rules' number of its attempt; the record counts the tries. */
final class CardNumber {
    private CardNumber() {}

    /**
     * The running number as a file has it; what was typed where that is no number.
     *
     * @param typed the number of the card
     * @param known of the attempt that the card completes; empty for one that is not in the record yet
     * @param wrong takes what is wrong with the number
     */
    static String running(
            Tx tx, EntryAdded entry, String typed, Optional<AttemptNumber> known, Map<String, String> wrong) {
        if (known.isPresent()) {
            return String.valueOf(known.get().running());
        }
        AttemptNumber next = AttemptNumbers.next(tx, entry);
        int repeats = next.running() - next.rule();
        if (repeats == 0 || !typed.matches("[0-9]{1,3}")) {
            return typed;
        }
        int card = Integer.parseInt(typed);
        if (card != next.rule()) {
            wrong.putIfAbsent(
                    "attempt",
                    "Next of " + entry.name() + " is " + next.words() + "; this card says " + card
                            + ". If it is the flight after the last one in the record, write " + next.rule());
        }
        return String.valueOf(card + repeats);
    }
}
