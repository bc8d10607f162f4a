import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * Writes one file of public notices: the licences of the libraries by name, then each text that a library brings, once,
 * with the libraries that bring it. Run by the build: {@code java LibraryNotices.java NAMES FOLDER-OF-JARS OUT}.
 */
public final class LibraryNotices {
    private static final Pattern TEXTS =
            Pattern.compile("(META-INF/)?(licenses?/)?[^/]*(LICENSE|NOTICE|COPYING|about)[^/]*(\\.txt|\\.md|\\.html)?", Pattern.CASE_INSENSITIVE);

    private LibraryNotices() {}

    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 3) {
            throw new IllegalArgumentException("Three are needed: file of names, folder of jars, file to write");
        }
        Map<String, List<String>> jarsByText = texts(Path.of(arguments[1]));
        if (jarsByText.isEmpty()) {
            throw new IllegalStateException("No library in " + arguments[1] + " brings a licence: is the folder right?");
        }
        StringBuilder out = new StringBuilder("Skeinday, Apache-2.0, brings these libraries, each under its own licence.\n");
        out.append(Files.readString(Path.of(arguments[0])));
        jarsByText.forEach((text, jars) -> out.append("\n\n==== ")
                .append(String.join(", ", jars))
                .append(" ====\n\n")
                .append(text)
                .append('\n'));
        Path file = Path.of(arguments[2]);
        Files.createDirectories(file.getParent());
        Files.writeString(file, out);
    }

    /** What the jars bring, each text to the names of its jars. */
    private static Map<String, List<String>> texts(Path folder) throws IOException {
        Map<String, List<String>> found = new TreeMap<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path jar : files.filter(file -> file.toString().endsWith(".jar")).sorted().toList()) {
                add(jar, found);
            }
        }
        return found;
    }

    private static void add(Path jar, Map<String, List<String>> found) throws IOException {
        try (ZipFile zip = new ZipFile(jar.toFile())) {
            for (ZipEntry entry : zip.stream().filter(one -> !one.isDirectory()).toList()) {
                if (TEXTS.matcher(entry.getName()).matches() && !entry.getName().endsWith(".class")) {
                    try (InputStream in = zip.getInputStream(entry)) {
                        String text = new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n").strip();
                        List<String> jars = found.computeIfAbsent(text, key -> new ArrayList<>());
                        String name = jar.getFileName().toString();
                        if (!jars.contains(name)) {
                            jars.add(name);
                        }
                    }
                }
            }
        }
    }
}
