package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What the commands say to a slip of the keys, and that they begin nothing then. */
@Timeout(60)
class CommandsTest {
    @TempDir
    Path root;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... line) {
        return Skeinday.run(line, new PrintWriter(out, true), new PrintWriter(err, true), Commands.all());
    }

    private void refused(int code, String words, String... line) {
        assertEquals(code, run(line), err.toString());
        assertTrue(err.toString().contains(words), words + " in " + err);
        assertEquals(1, err.toString().strip().lines().count(), err.toString());
    }

    @Test
    void a_command_with_a_letter_missing_is_named() {
        refused(2, "There is no command serv. Did you mean serve?", "serv");
    }

    @Test
    void an_option_with_a_letter_missing_is_named() {
        refused(2, "There is no option --prt of serve. Did you mean --port?", "serve", "--prt", "1");
    }

    @Test
    void a_port_that_is_none_is_told_what_one_is() {
        refused(2, "--port: 'abc' is no port; name a number from 0 to 65535", "serve", "--port", "abc");
    }

    @Test
    void a_port_beyond_the_last_is_told_the_same() {
        refused(2, "--port: '65536' is no port; name a number from 0 to 65535", "serve", "--port", "65536");
    }

    @Test
    void a_file_is_no_data_folder() throws Exception {
        Path file = Files.writeString(root.resolve("notes.txt"), "mine");
        refused(2, file + " is a file, not a folder: name a folder", "serve", "--data", file.toString());
    }

    @Test
    void nor_can_one_be_made_inside_a_file() throws Exception {
        Path file = Files.writeString(root.resolve("notes.txt"), "mine");
        String inside = file.resolve("day").toString();
        refused(6, file + " is a file, not a folder: name a folder", "serve", "--data", inside);
        assertFalse(err.toString().contains("Exception"), err.toString());
    }

    @Test
    void a_folder_that_is_not_there_is_said_with_its_whole_path() {
        refused(2, "There is no folder " + Path.of("nowhere").toAbsolutePath(), "restore", "nowhere");
    }

    @Test
    void nor_is_one_to_be_imported() {
        refused(2, "There is no folder " + Path.of("nowhere").toAbsolutePath(), "import", "nowhere");
    }

    @Test
    void a_busy_port_begins_no_record() throws Exception {
        Path data = root.resolve("day");
        try (ServerSocket taken = new ServerSocket(0)) {
            String port = String.valueOf(taken.getLocalPort());
            refused(
                    3,
                    "Port " + port + " is in use. Name another one",
                    "serve",
                    "--data",
                    data.toString(),
                    "--port",
                    port);
            assertFalse(Files.exists(data));
            assertEquals(3, run("demo", "--data", data.toString(), "--port", port));
            assertFalse(Files.exists(data));
        }
    }

    @Test
    void help_begins_with_what_is_used_most_and_names_the_data_folder() {
        assertEquals(0, run("--help"));
        String help = out.toString();
        assertTrue(help.indexOf("  serve ") > 0 && help.indexOf("  serve ") < help.indexOf("  demo "), help);
        assertTrue(help.indexOf("  demo ") < help.indexOf("  winding "), help);
        assertTrue(help.contains("Data folder: "), help);
    }
}
