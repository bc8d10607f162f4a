package org.skeinday;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The real program in a process of its own, so that it can be killed. */
public final class Program implements AutoCloseable {
    private static final int STARTED_WITH = 2; // options that those of a single start may overrule
    private static final long SIGINT_BIT = 1L << (2 - 1);
    private static final List<String> LAUNCH = launch();

    private final Process process;
    private final int port;
    private final String joinToken;

    private final List<String> said;

    private Program(Process process, int port, String joinToken, List<String> said) {
        this.said = Collections.synchronizedList(said);
        this.process = process;
        this.port = port;
        this.joinToken = joinToken;
    }

    /** Serves {@code data} and waits until the program says that it is ready. */
    public static Program serve(Path data, int port) throws IOException {
        return serve(data, port, List.of());
    }

    /** The same with options of Java's own, which go before and so after those of every start here. */
    public static Program serve(Path data, int port, List<String> java) throws IOException {
        return ready(start(java, List.of("serve", "--data", data.toString(), "--port", String.valueOf(port))), port);
    }

    /** Waits until a program that was begun says that it is ready. */
    public static Program ready(Process process, int port) throws IOException {
        BufferedReader out =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        List<String> said = new ArrayList<>();
        String token = "";
        for (String line = out.readLine(); line != null; line = out.readLine()) {
            said.add(line);
            if (line.contains("/join#")) {
                token = line.substring(line.indexOf('#') + 1).strip();
            }
            if (line.contains("Stop:")) {
                return new Program(process, port, token, said).listening(out);
            }
        }
        throw new IOException("The program ended: " + said);
    }

    /** A pipe that nobody reads would stop the program once it is full. */
    private Program listening(BufferedReader out) {
        Thread reading = new Thread(() -> {
            try {
                for (String line = out.readLine(); line != null; line = out.readLine()) {
                    said.add(line);
                }
            } catch (IOException e) {
                // it has ended
            }
        });
        reading.setDaemon(true);
        reading.start();
        return this;
    }

    /** What it has said so far, with its log. */
    public List<String> said() {
        synchronized (said) {
            return List.copyOf(said);
        }
    }

    public long pid() {
        return process.pid();
    }

    /** Sends a signal, for example {@code INT} for Ctrl-C, and waits a minute at most. @return the exit code */
    public int end(String signal) throws IOException, InterruptedException {
        new ProcessBuilder("kill", "-" + signal, String.valueOf(process.pid()))
                .start()
                .waitFor();
        if (!process.waitFor(1, TimeUnit.MINUTES)) {
            throw new AssertionError("A minute after " + signal + " it still runs: " + String.join("\n", said()));
        }
        return process.exitValue();
    }

    /**
     * Whether Ctrl-C reaches what is started here: a shell without job control lets what it starts in the background
     * ignore it, and Java keeps to that.
     */
    public static boolean isInterruptible() throws IOException {
        for (String line : Files.readAllLines(Path.of("/proc/self/status"))) {
            if (line.startsWith("SigIgn:")) {
                return (Long.parseUnsignedLong(line.substring(7).strip(), 16) & SIGINT_BIT) == 0;
            }
        }
        return true;
    }

    /** Runs a command to its end. @return its exit code */
    public static int run(String... arguments) throws IOException, InterruptedException {
        Process process = start(List.of(arguments));
        process.getInputStream().transferTo(System.out);
        return process.waitFor();
    }

    /** What a command said, its errors too. */
    public record Said(int exitCode, String text) {}

    /** Runs a command to its end and keeps what it says. */
    public static Said listen(String... arguments) throws IOException, InterruptedException {
        return listenWith(List.of(), arguments);
    }

    /** The same with options of Java's own. */
    public static Said listenWith(List<String> java, String... arguments) throws IOException, InterruptedException {
        Process process = start(java, List.of(arguments));
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Said(process.waitFor(), text);
    }

    /** Starts a command and does not wait for it. */
    public static Process begin(String... arguments) throws IOException {
        return start(List.of(arguments));
    }

    private static Process start(List<String> arguments) throws IOException {
        return start(List.of(), arguments);
    }

    private static Process start(List<String> java, List<String> arguments) throws IOException {
        List<String> line = new ArrayList<>(LAUNCH);
        line.addAll(1 + STARTED_WITH, java);
        line.addAll(arguments);
        return new ProcessBuilder(line).redirectErrorStream(true).start();
    }

    /** What starts it, to be started as somebody else. */
    public static List<String> launching() {
        return LAUNCH;
    }

    /** The jar where it has been packaged, with its classes ready to load: half the time of a start. */
    private static List<String> launch() {
        List<String> java = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx192m",
                "-XX:TieredStopAtLevel=1")); // a short life: what starts sooner wins
        Path jar = Path.of("target/skeinday.jar");
        if (!Files.exists(jar)) {
            java.addAll(List.of("-cp", System.getProperty("java.class.path"), "org.skeinday.Main"));
            return java;
        }
        java.addAll(List.of("-Xlog:cds=off", "-Xlog:cds+dynamic=off", "-XX:SharedArchiveFile=" + archive(java, jar)));
        java.addAll(List.of("-jar", jar.toString()));
        return java;
    }

    /** Made once for a jar; moved into place when it is whole, since two runs may want it in one moment. */
    private static Path archive(List<String> java, Path jar) {
        Path archive = Path.of("target/test-start.jsa");
        try {
            if (Files.exists(archive)
                    && Files.getLastModifiedTime(archive).compareTo(Files.getLastModifiedTime(jar)) > 0) {
                return archive;
            }
            Path folder = Files.createTempDirectory("skeinday-start");
            Path aside = Files.createTempFile(archive.getParent(), "test-start", ".jsa");
            List<String> line = new ArrayList<>(java);
            line.addAll(List.of("-Xlog:cds=off", "-Xlog:cds+dynamic=off", "-XX:ArchiveClassesAtExit=" + aside));
            line.addAll(List.of("-jar", jar.toString(), "import", "demo-data", "--data", folder.toString()));
            Process process = new ProcessBuilder(line).redirectErrorStream(true).start();
            process.getInputStream().readAllBytes();
            process.waitFor();
            return Files.move(aside, archive, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    public static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    public String at(String path) {
        return "http://localhost:" + port + path;
    }

    public int port() {
        return port;
    }

    public String joinLink() {
        return at("/join#" + joinToken);
    }

    /** As a power cut or {@code kill -9} does it. */
    public void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    @Override
    public void close() throws InterruptedException {
        process.destroy();
        process.waitFor();
    }
}
