package org.skeinday.platform.http;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The scripts as they go to the browser. What every page needs is put together into {@value #ROOT} with a scope for each
 * module, so that a page asks once and not a dozen times; the other modules import from there. Each module stays what it
 * is in its folder: this understands {@code import} and {@code export} at the begin of a line, and refuses any other.
 */
final class Modules {
    static final String ROOT = "page.js";

    private static final Pattern IMPORT =
            Pattern.compile("^import (?:\\{([^}]*)\\} from )?'\\./([a-z]+\\.js)';$", Pattern.MULTILINE);
    private static final Pattern LATER = Pattern.compile("import\\('\\./([a-z]+\\.js)'\\)");
    private static final Pattern EXPORT =
            Pattern.compile("^export (?=(?:const|(?:async )?function) (\\w+))", Pattern.MULTILINE);
    private static final Pattern OTHER = Pattern.compile("^(?:import|export)\\b.*$", Pattern.MULTILINE);
    private static final Pattern COMMENT_LINE = Pattern.compile("^ *//.*\\R", Pattern.MULTILINE);

    private final UnaryOperator<String> source;
    /** What every page needs, in the order in which it may run, with the names that it exports. */
    private final Map<String, List<String>> shared = new LinkedHashMap<>();

    private final String root;

    /** @param source text of a module by its file name */
    Modules(UnaryOperator<String> source) {
        this.source = source;
        StringBuilder text = new StringBuilder();
        add(ROOT, text, new TreeSet<>());
        this.root = text.toString();
    }

    /** The text to serve under a name, null when it is served as a part of {@value #ROOT} only. */
    @Nullable
    String text(String name) {
        if (name.equals(ROOT)) {
            return root;
        }
        return shared.containsKey(name) ? null : fromRoot(source.apply(name));
    }

    private String fromRoot(String text) {
        String now = IMPORT.matcher(text).replaceAll(found -> {
            String from = shared.containsKey(found.group(2)) ? ROOT : found.group(2);
            String names = found.group(1) == null ? "" : "{" + found.group(1) + "} from ";
            return Matcher.quoteReplacement("import " + names + "'./" + from + "';");
        });
        return LATER.matcher(now)
                .replaceAll(
                        found -> "import('./" + (shared.containsKey(found.group(1)) ? ROOT : found.group(1)) + "')");
    }

    private void add(String name, StringBuilder all, Set<String> under) {
        if (shared.containsKey(name)) {
            return;
        }
        if (!under.add(name)) {
            throw new IllegalStateException("Modules must not import each other in a circle, but did: " + under);
        }
        String text = source.apply(name);
        IMPORT.matcher(text).results().forEach(found -> add(found.group(2), all, under));
        under.remove(name);
        List<String> names =
                EXPORT.matcher(text).results().map(found -> found.group(1)).toList();
        refuseTwice(name, names);
        shared.put(name, names);
        all.append(scope(name, text, names));
    }

    private void refuseTwice(String name, List<String> names) {
        shared.forEach(
                (other, theirs) -> theirs.stream().filter(names::contains).forEach(twice -> {
                    throw new IllegalStateException(
                            "A name must be exported once, but " + twice + " is by " + other + " and " + name);
                }));
    }

    private static String scope(String name, String text, List<String> names) {
        String body = IMPORT.matcher(COMMENT_LINE.matcher(text).replaceAll(""))
                .replaceAll(found -> Matcher.quoteReplacement(
                        found.group(1) == null
                                ? ""
                                : "const {" + found.group(1).replace(" as ", ": ") + "} = " + scopeOf(found.group(2))
                                        + ";"));
        body = EXPORT.matcher(body).replaceAll("");
        Matcher other = OTHER.matcher(body);
        if (other.find()) {
            throw new IllegalStateException(
                    name + " has an import or export of a form that is not known here: " + other.group());
        }
        String listed = names.stream().sorted().collect(Collectors.joining(", "));
        String exported = names.isEmpty() ? "" : "export const { " + listed + " } = " + scopeOf(name) + ";\n";
        return "const " + scopeOf(name) + " = (() => {\n" + body + "return { " + listed + " };\n})();\n" + exported;
    }

    private static String scopeOf(String name) {
        return "$" + name.substring(0, name.indexOf('.'));
    }
}
