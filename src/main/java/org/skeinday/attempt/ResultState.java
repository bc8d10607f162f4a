package org.skeinday.attempt;

import java.util.List;
import java.util.Optional;

/**
 * Whether a result is final, and in which version.
 *
 * @param last the version that was made final last; empty for none yet
 * @param changes since then
 * @param unsettled whether a time of it may still change: a signature, a protest or a flight is open
 */
public record ResultState(Optional<ResultFinal> last, List<ResultFinal.Change> changes, boolean unsettled) {
    public ResultState {
        changes = List.copyOf(changes);
    }

    public boolean isFinal() {
        return last.isPresent() && changes.isEmpty() && !unsettled;
    }

    /** Of the result as it is shown: each change after a final version makes the next one. */
    public int version() {
        return last.map(ResultFinal::version).orElse(0) + (changes.isEmpty() && last.isPresent() ? 0 : 1);
    }

    /** In words. @param made when the last one was made final, in words; empty for none */
    public String words(String made) {
        if (last.isEmpty()) {
            return "Provisional";
        }
        int before = last.get().version();
        if (isFinal()) {
            return "Final, version " + before + " of " + made;
        }
        return changes.isEmpty()
                ? "Provisional again: version " + before + " of " + made + " stands, but something of it is open"
                : "Provisional, version " + version() + ": changed since version " + before + " of " + made;
    }
}
