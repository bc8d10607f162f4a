package org.skeinday;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/** Ids as an act hands them out, under a prefix of the test's own: of one length, each another. */
public final class TestIds {
    private TestIds() {}

    public static Supplier<String> from(String prefix) {
        var next = new AtomicInteger(1_000_000);
        return () -> prefix + next.getAndIncrement();
    }
}
