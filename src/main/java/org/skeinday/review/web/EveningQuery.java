package org.skeinday.review.web;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.http.Refusal;
import org.skeinday.review.FlightFilter;

/**
 * What somebody looks at, as the address has it; what is not asked is not there.
 *
 * @param asked by parameter, none of them empty
 */
record EveningQuery(Map<String, String> asked) {
    static final String LOOK = "look";
    static final String ABOUT = "about";
    static final String PAGE = "page";
    static final List<String> FILTERS = List.of("model", "batch", "motor", "winder", "valid");

    static EveningQuery of(Context ctx) {
        Map<String, String> asked = new TreeMap<>();
        List.of(LOOK, ABOUT, PAGE).forEach(name -> put(asked, name, ctx.queryParam(name)));
        FILTERS.forEach(name -> put(asked, name, ctx.queryParam(name)));
        return new EveningQuery(asked);
    }

    private static void put(Map<String, String> asked, String name, @Nullable String value) {
        if (value != null && !value.isBlank()) {
            asked.put(name, value);
        }
    }

    /** Empty when it is not asked. */
    String get(String name) {
        return asked.getOrDefault(name, "");
    }

    FlightFilter filter() {
        String valid = get("valid");
        return new FlightFilter(
                null,
                null,
                null,
                asked.get("model"),
                asked.get("batch"),
                asked.get("motor"),
                asked.get("winder"),
                valid.isEmpty() ? null : (Boolean) valid.equals("yes"));
    }

    /** From 0. */
    int page() {
        String typed = get(PAGE);
        if (!typed.isEmpty() && !typed.matches("\\d{1,6}")) {
            throw Refusal.notFound("There is no such page of flights.");
        }
        return typed.isEmpty() ? 0 : Integer.parseInt(typed);
    }

    /** The same with another value; an empty one asks it no more. Whoever asks something else begins at the first page. */
    EveningQuery with(String name, String value) {
        Map<String, String> other = new TreeMap<>(asked);
        other.remove(PAGE);
        if (value.isEmpty()) {
            other.remove(name);
        } else {
            other.put(name, value);
        }
        return new EveningQuery(other);
    }

    String address(String path) {
        return asked.isEmpty()
                ? path
                : path + "?"
                        + asked.entrySet().stream()
                                .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
                                .collect(Collectors.joining("&"));
    }
}
