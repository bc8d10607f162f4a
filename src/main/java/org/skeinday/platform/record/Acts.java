package org.skeinday.platform.record;

import java.time.Duration;
import java.util.Optional;
import java.util.function.Consumer;

/** Where acts go: the one writer, as pages and commands see it. */
@FunctionalInterface
public interface Acts {
    /** Waits until the act is saved, refused, or 10 s have passed. */
    Answer submit(Act act);

    /** The same for who waits no longer than this, and asks with {@link #told} from then on. */
    default Answer submit(Act act, Duration within) {
        return submit(act);
    }

    /** Waits as long as it takes. @param progress hears each second how far it has come, in a sentence */
    default Answer await(Act act, Consumer<String> progress) {
        return submit(act);
    }

    /**
     * What became of an act whose waiter left.
     *
     * @return saved, refused, or not yet with how far it has come; empty when nothing of it is in the record, nor on its
     *     way there
     */
    default Optional<Answer> told(String act) {
        return Optional.empty();
    }
}
