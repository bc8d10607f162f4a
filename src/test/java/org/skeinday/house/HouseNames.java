package org.skeinday.house;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** What types are called: read from the names of files and their imports, so that nothing has to be compiled. */
final class HouseNames {
    private static final Pattern IMPORT = Pattern.compile("^import (?:static )?([\\w.]+)\\.(\\w+);", Pattern.MULTILINE);

    private static final Pattern DECLARED =
            Pattern.compile("(?:^|[{};]) *(?:\\w+ )*(?:class|record|enum|interface) (\\w+)", Pattern.MULTILINE);

    private HouseNames() {}

    /**
     * Types of one simple name in two rooms, tests and all: a reader must never ask which of them is meant. Nested ones are no twins: they
     * are read with the name of the type around them.
     */
    static List<String> twins(Path... roots) throws IOException {
        Map<String, Set<String>> homes = new TreeMap<>();
        for (Path root : roots) {
            for (Path file : types(root)) {
                homes.computeIfAbsent(simple(file), n -> new TreeSet<>())
                        .add(root.relativize(file.getParent()).toString());
            }
        }
        return homes.entrySet().stream()
                .filter(e -> e.getValue().size() > 1)
                .map(e -> e.getKey() + " in " + String.join(" and ", e.getValue()))
                .toList();
    }

    /** Types, nested ones too, that are called like one of java.lang, which every file sees. */
    static List<String> shadows(Path main) throws IOException {
        TreeSet<String> found = new TreeSet<>();
        for (Path file : types(main)) {
            Matcher declared = DECLARED.matcher(Files.readString(file));
            while (declared.find()) {
                if (isInJavaLang(declared.group(1))) {
                    found.add(declared.group(1) + " in " + simple(file));
                }
            }
        }
        return List.copyOf(found);
    }

    /** Files that import a type of a library which is called like one of their own room. */
    static List<String> likeALibrary(Path main) throws IOException {
        List<Path> all = types(main);
        Map<Path, Set<String>> rooms = new TreeMap<>();
        all.forEach(file ->
                rooms.computeIfAbsent(file.getParent(), r -> new TreeSet<>()).add(simple(file)));
        TreeSet<String> found = new TreeSet<>();
        for (Path file : all) {
            Matcher imported = IMPORT.matcher(Files.readString(file));
            while (imported.find()) {
                boolean ours = imported.group(1).startsWith(HouseRules.ROOT);
                if (!ours && rooms.getOrDefault(file.getParent(), Set.of()).contains(imported.group(2))) {
                    found.add(simple(file) + " imports " + imported.group(1) + "." + imported.group(2));
                }
            }
        }
        return List.copyOf(found);
    }

    private static boolean isInJavaLang(String name) {
        try {
            Class.forName("java.lang." + name, false, null);
            return true;
        } catch (ClassNotFoundException | LinkageError e) {
            return false;
        }
    }

    private static List<Path> types(Path main) throws IOException {
        try (Stream<Path> files = Files.walk(main)) {
            return files.filter(f -> f.toString().endsWith(".java"))
                    .filter(f -> !simple(f).equals("package-info"))
                    .sorted()
                    .toList();
        }
    }

    private static String simple(Path file) {
        return file.getFileName().toString().replace(".java", "");
    }
}
