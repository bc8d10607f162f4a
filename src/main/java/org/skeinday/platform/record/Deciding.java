package org.skeinday.platform.record;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
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

    /** Of what was sent, never of what the server added: a moment would make a repeat another act. */
    static String sum(Act act) {
        return Sha.hex(act.kind() + "\n" + (act.sent() == null ? act.content().toString() : act.sent()));
    }

    private static String why(Exception e) {
        if (e.getCause() instanceof IllegalArgumentException cause) {
            return String.valueOf(cause.getMessage());
        }
        if (e instanceof UnrecognizedPropertyException unknown) {
            return "it has no '" + unknown.getPropertyName() + "'";
        }
        if (e instanceof JsonMappingException mapping && !mapping.getPath().isEmpty()) {
            return "'" + mapping.getPath().get(0).getFieldName() + "' is missing, or is not what it must be";
        }
        return "its form is another one";
    }

    Decision decide(Tx tx, Act act, long nowMs) {
        ActKind<?> kind = kinds.get(act.kind());
        if (kind == null) {
            return Decision.refused("Skeinday knows no act called '" + act.kind() + "'");
        }
        return decide(tx, act, nowMs, kind);
    }

    private <C> Decision decide(Tx tx, Act act, long nowMs, ActKind<C> kind) {
        C content;
        try {
            content = Json.MAPPER
                    .readerFor(kind.content())
                    .with(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
                    .without(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
                    .readValue(act.content());
        } catch (IOException | IllegalArgumentException e) {
            return Decision.refused("The entry could not be read: " + why(e));
        }
        var context =
                new ActContext(act.id(), Instant.ofEpochMilli(nowMs), clock.getZone(), act.device(), act.person());
        try {
            return kind.action().decide(tx, context, content);
        } catch (IllegalArgumentException e) {
            return Decision.refused(String.valueOf(e.getMessage())); // a value refused what was entered
        }
    }
}
