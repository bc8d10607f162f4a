package org.skeinday.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A hall has no internet: templates, styles and scripts name nothing elsewhere, and nothing that the policy would stop. */
class OwnFilesOnlyTest {
    /** With or without its scheme; {@code //} begins a line's comment in scripts when nothing of a name follows at once. */
    private static final Pattern ELSEWHERE = Pattern.compile(
            "(?i)\\b(?:https?|wss?|ftp)://[\\w$]|[\"'(=]\\s*//[a-z0-9]|\\burl\\(\\s*[\"']?(?!data:|/static/|\\.\\./|#)");

    private static final Pattern INLINE = Pattern.compile(
            "(?i)<[^>]*\\s(?:style|on[a-z]+|hx-on[^=]*|srcdoc)\\s*=|<style|<script(?![^>]*\\ssrc=\"/static/)|<base\\b|<meta[^>]*http-equiv"
                    + "|javascript:|\\$unsafe|<iframe|<object|<embed");

    private static final Pattern RUNS_TEXT = Pattern.compile(
            "\\beval\\(|new Function|document\\.write|setTimeout\\(\\s*['\"`]|importScripts|\\bhx-eval");

    /** What an SVG must say of itself; it is never fetched. */
    private static final String SVG = "http://www.w3.org/2000/svg";

    private static List<String> found(String folder, Pattern pattern) throws IOException {
        List<String> found = new ArrayList<>();
        int files = 0;
        try (Stream<Path> all = Files.walk(Path.of(folder))) {
            for (Path file : all.filter(Files::isRegularFile).sorted().toList()) {
                files++;
                found.addAll(in(file.toString(), text(file), pattern));
            }
        }
        assertTrue(files > 1, "files in " + folder + ": " + files);
        return found;
    }

    private static List<String> in(String name, String text, Pattern pattern) {
        List<String> found = new ArrayList<>();
        Matcher matcher = pattern.matcher(text.replace(SVG, ""));
        while (matcher.find()) {
            found.add(name + ": " + matcher.group());
        }
        return found;
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void nothing_elsewhere_is_named() throws Exception {
        assertEquals(List.of(), found("src/main/jte", ELSEWHERE));
        assertEquals(List.of(), found("static", ELSEWHERE));
    }

    @Test
    void templates_hold_no_script_no_style_and_no_text_that_is_not_escaped() throws Exception {
        assertEquals(List.of(), found("src/main/jte", INLINE));
    }

    @Test
    void scripts_run_no_text() throws Exception {
        assertEquals(List.of(), found("static/js", RUNS_TEXT));
    }

    @Test
    void each_of_these_would_be_found() {
        for (String bad : List.of(
                "<img src=\"https://cdn.example/x.png\">",
                "<script src=\"//cdn.example/x.js\">",
                "@import url(//fonts.example/a.css)",
                "background: url('http://a.example/b')",
                "fetch('wss://a.example')")) {
            assertFalse(in("x", bad, ELSEWHERE).isEmpty(), bad);
        }
        for (String bad : List.of(
                "<p style=\"color:red\">",
                "<a onclick=\"x()\">",
                "<script>x</script>",
                "<a href=\"javascript:x\">",
                "<p>$unsafe{name}</p>")) {
            assertEquals(1, in("x", bad, INLINE).size(), bad);
        }
        assertEquals(1, in("x", "eval('x')", RUNS_TEXT).size());
    }
}
