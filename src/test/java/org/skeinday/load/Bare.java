package org.skeinday.load;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.skeinday.Program;

/** {@link BareServer} in a process of its own, started as ours is. */
final class Bare implements AutoCloseable {
    private final Process process;
    private final int port = Program.freePort();

    /** @param page what it hands out to whoever asks */
    Bare(Path root, byte[] page) throws IOException {
        Path handedOut = Files.write(root.resolve("bare-page"), page);
        process = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx192m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        BareServer.class.getName(),
                        root.resolve("bare").toString(),
                        handedOut.toString(),
                        String.valueOf(port)))
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        String ready =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8)).readLine();
        if (!"Ready.".equals(ready)) {
            throw new IOException("The bare server did not start: " + ready);
        }
    }

    int port() {
        return port;
    }

    String at(String path) {
        return "http://127.0.0.1:" + port + path;
    }

    long pid() {
        return process.pid();
    }

    @Override
    public void close() throws InterruptedException {
        process.destroy();
        process.waitFor();
    }
}
