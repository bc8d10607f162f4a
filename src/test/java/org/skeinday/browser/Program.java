package org.skeinday.browser;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The real program in a process of its own, so that it can be killed. */
final class Program implements AutoCloseable {
    private final Process process;
    private final int port;
    private final String joinToken;

    private Program(Process process, int port, String joinToken) {
        this.process = process;
        this.port = port;
        this.joinToken = joinToken;
    }

    /** Serves {@code data} and waits until the program says that it is ready. */
    static Program serve(Path data, int port) throws IOException {
        Process process = start(List.of("serve", "--data", data.toString(), "--port", String.valueOf(port)));
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
                return new Program(process, port, token);
            }
        }
        throw new IOException("The program ended: " + said);
    }

    /** Runs a command to its end. @return its exit code */
    static int run(String... arguments) throws IOException, InterruptedException {
        Process process = start(List.of(arguments));
        process.getInputStream().transferTo(System.out);
        return process.waitFor();
    }

    private static Process start(List<String> arguments) throws IOException {
        List<String> line = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx192m",
                "-cp",
                System.getProperty("java.class.path"),
                "org.skeinday.Main"));
        line.addAll(arguments);
        return new ProcessBuilder(line).redirectErrorStream(true).start();
    }

    static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    String at(String path) {
        return "http://localhost:" + port + path;
    }

    String joinLink() {
        return at("/join#" + joinToken);
    }

    /** As a power cut or {@code kill -9} does it. */
    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    @Override
    public void close() throws InterruptedException {
        process.destroy();
        process.waitFor();
    }
}
