package org.skeinday.device.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Catalogue;
import org.skeinday.Demo;
import org.skeinday.device.store.DeviceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActStore;

/** What a stranger's cookie costs: what cannot be a token is answered without the record. */
class SessionsReadTest {
    @TempDir
    Path root;

    @Test
    void the_record_is_read_for_what_may_be_a_token_and_for_nothing_else() throws Exception {
        Path day = Demo.into(root.resolve("day"));
        ActStore record = ActStore.open(day, Catalogue.projection(), Clock.systemUTC());
        var tokens = new KnownTokens(token -> record.read((Tx tx) -> DeviceStore.ofToken(tx, token)));
        Sessions.Known known = Sessions.Known.in(record, tokens);
        record.close(); // whoever reads it now fails
        List<Function<String, ? extends Optional<?>>> asked =
                List.of(known.ofToken(), known.ofEarlier(), known.ofJoining(), known.ofEnded());
        for (Function<String, ? extends Optional<?>> ask : asked) {
            for (String none : List.of("", "x", "a".repeat(31), "A".repeat(32), "g".repeat(32), "a".repeat(33))) {
                assertEquals(Optional.empty(), ask.apply(none), none);
            }
            assertThrows(RuntimeException.class, () -> ask.apply("a".repeat(32)));
        }
    }
}
