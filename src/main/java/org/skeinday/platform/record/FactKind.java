package org.skeinday.platform.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.function.BiConsumer;
import org.skeinday.platform.db.Tx;

/**
 * How one kind of fact becomes rows. Living and replaying call the same; no rule, clock or id source in it.
 *
 * @param newest version of its body that this program can read; it reads every one from 1 on
 */
public record FactKind(String kind, int newest, Apply apply) {
    /** Puts one fact into tables. */
    @FunctionalInterface
    public interface Apply {
        void apply(Tx tx, int v, JsonNode body);
    }

    /**
     * A fact kind that so far has one version.
     *
     * @param into puts one fact, already read into its record, into tables
     */
    public static <T> FactKind of(String kind, Class<T> type, BiConsumer<Tx, ? super T> into) {
        return new FactKind(kind, 1, (tx, v, body) -> into.accept(tx, read(kind, body, type)));
    }

    private static <T> T read(String kind, JsonNode body, Class<T> type) {
        try {
            return Json.MAPPER.treeToValue(body, type);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("A fact " + kind + " cannot be read: " + e.getMessage(), e);
        }
    }
}
