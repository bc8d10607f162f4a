import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;

/**
 * Makes target/portable/Skeinday: the program with its own Java in one folder, by the JDK's jpackage. Run by Maven as a
 * single source file; its arguments are the build folder and the version.
 */
public final class Portable {
    private static final String ARCHIVE = "skeinday.jsa";

    /** The first compiler alone: a start is over before the second has earned what it takes. */
    private static final List<String> JAVA =
            List.of("-Xmx256m", "-XX:TieredStopAtLevel=1", "-Xlog:cds=off", "-Xlog:cds+dynamic=off");

    private Portable() {}

    public static void main(String[] args) throws IOException, InterruptedException {
        Path build = Path.of(args[0]).toAbsolutePath();
        Path place = build.resolve("portable");
        Path input = build.resolve("portable-input");
        delete(place);
        delete(input);
        Files.createDirectories(input);
        Files.copy(build.resolve("skeinday.jar"), input.resolve("skeinday.jar"));
        ToolProvider jpackage = ToolProvider.findFirst("jpackage")
                .orElseThrow(() -> new IllegalStateException("This Java has no jpackage: build with a whole JDK, 17 or newer"));
        int code = jpackage.run(
                new PrintWriter(System.out, true),
                new PrintWriter(System.err, true),
                options(place, input, args[1]).toArray(String[]::new));
        delete(input);
        if (code != 0) {
            throw new IllegalStateException("jpackage ended with " + code);
        }
        addLibraries(build, only(place.resolve("Skeinday"), "app"));
        archive(place.resolve("Skeinday"), build.resolve("portable-day"));
        System.out.println("Made " + place.resolve("Skeinday"));
    }

    /** Beside the jar, as its manifest names them: put there by jpackage, each would stand on the class path twice. */
    private static void addLibraries(Path build, Path app) throws IOException {
        Path lib = Files.createDirectories(app.resolve("lib"));
        try (Stream<Path> libraries = Files.list(build.resolve("lib"))) {
            for (Path one : libraries.toList()) {
                Files.copy(one, lib.resolve(one.getFileName()));
            }
        }
    }

    private static List<String> options(Path place, Path input, String version) {
        List<String> options = new ArrayList<>(List.of(
                "--type", "app-image", "--name", "Skeinday", "--dest", place.toString(), "--input", input.toString()));
        options.addAll(List.of("--main-jar", "skeinday.jar", "--main-class", "org.skeinday.Main"));
        options.addAll(List.of("--app-version", version.replaceAll("[^0-9.].*", ""), "--arguments", "serve --open"));
        for (String one : JAVA) {
            options.addAll(List.of("--java-options", one));
        }
        options.addAll(List.of("--java-options", "-XX:SharedArchiveFile=$APPDIR/" + ARCHIVE));
        options.addAll(List.of("--add-modules", "java.se,jdk.unsupported,jdk.crypto.ec,jdk.zipfs,jdk.charsets"));
        options.addAll(List.of("--jlink-options", "--strip-debug --no-header-files --no-man-pages --compress=2"));
        if (isWindows()) {
            options.add("--win-console"); // it shows addresses and the PIN
        }
        return options;
    }

    /**
     * Keeps the classes that a start needs ready beside the program: a day is begun, started a second time, asked for its
     * first page and stopped, once, while the folder is made. Where that does not work, the folder only starts slower.
     */
    private static void archive(Path image, Path day) throws IOException, InterruptedException {
        Path runtime = only(image, "runtime").resolve("bin").resolve(isWindows() ? "java.exe" : "java");
        Path app = only(image, "app");
        Path jar = app.resolve("skeinday.jar");
        delete(day);
        run(runtime, List.of("-Xshare:dump"));
        Path archive = app.resolve(ARCHIVE);
        for (String last : List.of("-Xshare:auto", "-XX:ArchiveClassesAtExit=" + archive)) {
            List<String> command = new ArrayList<>(JAVA);
            command.addAll(List.of(last, "-cp", jar.toString(), "org.skeinday.Main", "serve", "--port", "0"));
            command.addAll(List.of("--data", day.toString()));
            serveOnce(runtime, command);
        }
        delete(day);
        System.out.println("Classes kept ready: " + (Files.exists(archive) ? Files.size(archive) / 1_000_000 + " MB" : "none"));
    }

    private static void run(Path java, List<String> arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(java.toString()));
        command.addAll(arguments);
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start().waitFor();
    }

    /** Starts it, asks for the first page as soon as it says where that is, and stops it as Ctrl-C would. */
    private static void serveOnce(Path java, List<String> arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(java.toString()));
        command.addAll(arguments);
        Process serving = new ProcessBuilder(command).redirectErrorStream(true).start();
        try (BufferedReader lines = serving.inputReader(StandardCharsets.UTF_8)) {
            String line;
            while ((line = lines.readLine()) != null) {
                int at = line.indexOf("http://localhost:");
                if (line.contains("On this laptop:") && at >= 0) {
                    ask(line.substring(at).strip());
                    break;
                }
            }
            serving.destroy();
            serving.waitFor();
        }
    }

    private static void ask(String address) {
        try (InputStream page = URI.create(address).toURL().openStream()) {
            page.readAllBytes();
        } catch (IOException e) {
            System.out.println("The first page was not kept ready: " + e.getMessage());
        }
    }

    private static boolean isWindows() {
        return System.getProperty("os.name").toLowerCase(Locale.ROOT).contains("win");
    }

    /** The one folder of that name that holds the program's part; each system has it in another place. */
    private static Path only(Path image, String name) throws IOException {
        try (Stream<Path> all = Files.walk(image)) {
            return all.filter(one -> Files.isDirectory(one) && one.endsWith(name))
                    .filter(one -> Files.exists(one.resolve("skeinday.jar")) || Files.exists(one.resolve("bin")))
                    .findFirst()
                    .orElseThrow(() -> new IllegalStateException("jpackage made no folder " + name + " in " + image));
        }
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
