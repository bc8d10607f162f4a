package org.skeinday.platform.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.skeinday.platform.db.Tx;

/** Finds the deed for an act and lets it decide. */
final class Deciding {
    private final Map<String, ActKind<?>> kinds;
    private final Clock clock;

    Deciding(List<ActKind<?>> kinds, Clock clock) {
        this.kinds = kinds.stream().collect(Collectors.toUnmodifiableMap(ActKind::kind, Function.identity()));
        this.clock = clock;
    }

    long nowMs() {
        return clock.millis();
    }

    static String sum(Act act) {
        return Sha.hex(act.kind() + "\n" + act.content());
    }

    Decision decide(Tx tx, Act act, long nowMs) {
        ActKind<?> kind = kinds.get(act.kind());
        if (kind == null) {
            return Decision.refused("Skeinday knows no act called '" + act.kind() + "'");
        }
        return decide(tx, act, nowMs, kind);
    }

    private static <C> Decision decide(Tx tx, Act act, long nowMs, ActKind<C> kind) {
        C content;
        try {
            content = Json.MAPPER.treeToValue(act.content(), kind.content());
        } catch (JsonProcessingException | IllegalArgumentException e) {
            Throwable root = e.getCause() instanceof IllegalArgumentException ? e.getCause() : e;
            String why = root instanceof JsonProcessingException j ? j.getOriginalMessage() : root.getMessage();
            return Decision.refused("The entry could not be read: " + why);
        }
        var context = new ActContext(act.id(), java.time.Instant.ofEpochMilli(nowMs), act.device(), act.person());
        try {
            return kind.deed().decide(tx, context, content);
        } catch (IllegalArgumentException e) {
            return Decision.refused(String.valueOf(e.getMessage())); // a value refused what was entered
        }
    }
}
