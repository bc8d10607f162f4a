package org.skeinday.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.skeinday.Demo;
import org.skeinday.Program;

/** A data folder that cannot be written is refused before the port is opened, in words. */
@Timeout(120)
class ReadOnlyFaultIT {
    private static final String NOBODY = "65534";

    /** Not in a folder of JUnit's: those are for its user alone, and nobody must get through. */
    private Path root;

    private Path data;
    private byte[] journal;

    @BeforeEach
    void aDayThatNobodyMayWrite() throws Exception {
        root = Files.createTempDirectory("skeinday-read-only");
        may(root, "rwxr-xr-x");
        data = Demo.into(root.resolve("day"));
        journal = Files.readAllBytes(data.resolve("journal.jsonl"));
        try (Stream<Path> files = Files.list(data)) {
            for (Path file : files.toList()) {
                may(file, "r--r--r--");
            }
        }
        may(data, "r-xr-xr-x");
    }

    @AfterEach
    void giveBack() throws IOException {
        may(data, "rwxr-xr-x");
        try (Stream<Path> all = Files.walk(root)) {
            for (Path file : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    private static void may(Path path, String rights) throws IOException {
        Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(rights));
    }

    /** Root may write everywhere: there the program is started as nobody. */
    private static Program.Said asNobody(String... arguments) throws IOException, InterruptedException {
        List<String> line = new ArrayList<>();
        if (Files.getOwner(Files.createTempFile("who", "")).getName().equals("root")) {
            line.addAll(List.of("setpriv", "--reuid=" + NOBODY, "--regid=" + NOBODY, "--clear-groups"));
        }
        line.addAll(Program.launching());
        line.addAll(List.of(arguments));
        try {
            Process process = new ProcessBuilder(line).redirectErrorStream(true).start();
            String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            return new Program.Said(process.waitFor(), text);
        } catch (IOException e) {
            Assumptions.abort("The program cannot be started as nobody: " + e.getMessage());
            throw e;
        }
    }

    @Test
    void serve_refuses_it_before_the_port_is_opened_and_says_what_to_do() throws Exception {
        Program.Said help = asNobody("--help");
        Assumptions.assumeTrue(help.exitCode() == 0, "Nobody cannot run the program here: " + help.text());
        try (ServerSocket taken = new ServerSocket(0)) { // had it come as far as the port, it would end with 3
            Program.Said said =
                    asNobody("serve", "--data", data.toString(), "--port", String.valueOf(taken.getLocalPort()));
            assertEquals(6, said.exitCode(), said.text());
            assertTrue(said.text().contains("The data folder " + data + " cannot be used"), said.text());
            assertTrue(said.text().contains("Choose another with --data"), said.text());
            assertFalse(said.text().contains("\tat "), "no trace: " + said.text());
        }
        assertEquals(-1, java.util.Arrays.mismatch(journal, Files.readAllBytes(data.resolve("journal.jsonl"))));
    }
}
