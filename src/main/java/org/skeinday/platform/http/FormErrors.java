package org.skeinday.platform.http;

import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What was typed into a form and, by field, what is wrong with it. A form shown first has neither.
 *
 * @param did what it did beside being saved, in words; empty for nothing
 */
public record FormErrors(Map<String, String> typed, Map<String, String> messages, String did) {
    public FormErrors(Map<String, String> typed, Map<String, String> messages) {
        this(typed, messages, "");
    }

    public FormErrors {
        typed = Map.copyOf(typed);
        messages = Map.copyOf(messages);
    }

    public static FormErrors none() {
        return new FormErrors(Map.of(), Map.of());
    }

    /** What was typed, nothing found wrong yet. */
    public static FormErrors of(Context context) {
        Map<String, String> typed = new LinkedHashMap<>();
        for (Map.Entry<String, List<String>> field : context.formParamMap().entrySet()) {
            typed.put(field.getKey(), String.join(",", field.getValue()));
        }
        return new FormErrors(typed, Map.of());
    }

    /** The same with one more message; the first for a field stays. */
    public FormErrors with(String field, String message) {
        Map<String, String> more = new LinkedHashMap<>(messages);
        more.putIfAbsent(field, message);
        return new FormErrors(typed, more, did);
    }

    /** The same with what it did beside being saved, in words. */
    public FormErrors doing(String words) {
        return new FormErrors(typed, messages, words);
    }

    public FormErrors withAll(Map<String, String> found) {
        FormErrors all = this;
        for (Map.Entry<String, String> entry : found.entrySet()) {
            all = all.with(entry.getKey(), entry.getValue());
        }
        return all;
    }

    public boolean isEmpty() {
        return messages.isEmpty();
    }

    /** Empty when the field is right. */
    public String message(String field) {
        return messages.getOrDefault(field, "");
    }

    /** Exactly what was typed, empty when nothing was. */
    public String typed(String field) {
        return typed.getOrDefault(field, "");
    }

    /** What was typed, or what the form shows first. */
    public String typedOr(String field, String first) {
        return typed.getOrDefault(field, first);
    }
}
