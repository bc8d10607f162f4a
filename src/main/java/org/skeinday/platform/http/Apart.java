package org.skeinday.platform.http;

import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.DatabaseTrouble;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What stands beside the work: pictures, forecasts, advice. Each is made apart and may fail; the keys, counts and buttons
 * that people work with stand on the page all the same, and a quiet line says what is missing.
 */
public final class Apart {
    private static final Logger LOG = LoggerFactory.getLogger(Apart.class);

    private Apart() {}

    /**
     * What {@code making} makes; where it cannot, what stands in its place.
     *
     * @param what it is, as a sentence begins with it: "The picture of this wind"
     * @param instead made of the sentence that says so
     */
    public static <T extends @Nullable Object> T made(String what, Supplier<T> making, Function<String, T> instead) {
        try {
            return making.get();
        } catch (Refusal | DatabaseTrouble e) { // the whole page has another answer then
            throw e;
        } catch (RuntimeException | Error e) {
            if (e instanceof VirtualMachineError && !(e instanceof StackOverflowError)) {
                throw e; // Java itself is in trouble: that is for the whole page, which is asked for again
            }
            LOG.error("Not made, its page stands without it: {}", what, e);
            return instead.apply(what + " cannot be shown just now. All else here holds; the log has the reason.");
        }
    }
}
