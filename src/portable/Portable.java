import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;

/**
 * Makes target/portable/Skeinday: the program with its own Java in one folder, by the JDK's jpackage. Run by Maven as a
 * single source file; its arguments are the build folder and the version.
 */
public final class Portable {
    private Portable() {}

    public static void main(String[] args) throws IOException {
        Path build = Path.of(args[0]);
        Path place = build.resolve("portable");
        Path input = build.resolve("portable-input");
        delete(place);
        delete(input);
        Files.createDirectories(input);
        Files.copy(build.resolve("skeinday.jar"), input.resolve("skeinday.jar"), StandardCopyOption.REPLACE_EXISTING);
        List<String> options = new java.util.ArrayList<>(List.of(
                "--type", "app-image", "--name", "Skeinday", "--dest", place.toString(), "--input", input.toString()));
        options.addAll(List.of("--main-jar", "skeinday.jar", "--main-class", "org.skeinday.Main"));
        options.addAll(List.of("--app-version", args[1].replaceAll("[^0-9.].*", "")));
        options.addAll(List.of("--arguments", "serve --open", "--java-options", "-Xmx256m"));
        options.addAll(List.of("--add-modules", "java.se,jdk.unsupported,jdk.crypto.ec,jdk.zipfs,jdk.charsets"));
        options.addAll(List.of("--jlink-options", "--strip-debug --no-header-files --no-man-pages --compress=2"));
        if (System.getProperty("os.name").toLowerCase(java.util.Locale.ROOT).contains("win")) {
            options.add("--win-console"); // it shows addresses and the PIN
        }
        ToolProvider jpackage = ToolProvider.findFirst("jpackage")
                .orElseThrow(() -> new IllegalStateException("This Java has no jpackage: build with a whole JDK, 17 or newer"));
        int code = jpackage.run(new PrintWriter(System.out, true), new PrintWriter(System.err, true), options.toArray(String[]::new));
        delete(input);
        if (code != 0) {
            throw new IllegalStateException("jpackage ended with " + code);
        }
        System.out.println("Made " + place.resolve("Skeinday"));
    }

    private static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(one);
                }
            }
        }
    }
}
