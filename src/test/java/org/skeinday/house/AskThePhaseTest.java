package org.skeinday.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.skeinday.attempt.AttemptNow;

/**
 * Pages ask an attempt for its phase and not the record for its state, which knows nothing of more turns, of a break and of
 * turns that are still on.
 */
class AskThePhaseTest {
    private static final JavaClasses MAIN = new ClassFileImporter().importPath(Path.of("target/classes/org/skeinday"));

    private static Map<String, Long> asking(String ring) {
        return MAIN.stream()
                .filter(one -> one.getPackageName().endsWith(ring))
                .flatMap(one -> one.getMethodCallsFromSelf().stream())
                .filter(AskThePhaseTest::asksTheState)
                .map(call -> call.getOriginOwner().getSimpleName())
                .collect(Collectors.groupingBy(Function.identity(), TreeMap::new, Collectors.counting()));
    }

    private static boolean asksTheState(JavaMethodCall call) {
        return call.getTargetOwner().isEquivalentTo(AttemptNow.class)
                && call.getName().equals("state");
    }

    @Test
    void no_page_asks_the_record_for_a_state() {
        assertEquals(Map.of(), asking(".web"), "ask LiveAttempt for the phase");
    }

    @Test
    void what_is_counted_is_seen_where_it_is_asked() {
        assertTrue(asking(".action").containsKey("AimActions"), "acts are decided on the record's own state");
    }
}
