package org.skeinday;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Backup;
import org.skeinday.platform.record.Verify;
import org.skeinday.prepare.FilledForms;

/** A name is erased: gone from pages, files and later backups, while the chain still holds. */
class ErasedPersonWebTest {
    private static final String[] PAGES = {
        "/",
        "/prepare/crew",
        "/prepare/entries",
        "/people",
        "/evening",
        "/day",
        "/results",
        "/desk",
        "/audit",
        "/checks",
        "/devices",
        "/bench",
        "/cards",
        "/key-in",
        "/log",
        "/evening/season",
        "/practice",
        "/timing"
    };

    @TempDir
    Path root;

    private Path folder;
    private String name = "";

    @BeforeEach
    void someone() throws Exception {
        folder = root.resolve("day");
        try (App app = Demo.start(folder)) {
            name = CalledForTests.value(
                    new Visitor(app.port(), "", 91).get("/people").body(), "Erase ([^\"]+)\"");
        }
    }

    private static String files(Visitor laptop) throws Exception {
        return String.join("", laptop.zip("/export.zip").values());
    }

    private String id(Visitor laptop) throws Exception {
        return CalledForTests.value(
                laptop.get("/people").body(), "Erase " + name + "\"[^§]*?name=\"person\" value=\"([^\"]+)\"");
    }

    @Test
    void it_takes_the_name_typed_again_and_the_coach() throws Exception {
        try (App app = Demo.startEmpty(folder)) {
            Visitor laptop = new Visitor(app.port(), "", 91);
            String id = id(laptop);
            var slip = laptop.form("/people/erase", Map.of("person", id, "name", name + "x"));
            assertEquals(422, slip.statusCode());
            assertTrue(slip.body().contains("Type the name exactly"), slip.body());
            assertEquals(
                    404,
                    laptop.form("/people/erase", Map.of("person", "nobody", "name", name))
                            .statusCode());
            Visitor captain = Demo.joined(app, "captain", "", 92);
            assertEquals(
                    403,
                    captain.form("/people/erase", Map.of("person", id, "name", name))
                            .statusCode());
            assertTrue(laptop.get("/prepare/crew").body().contains(name), "nobody was erased");
        }
    }

    @Test
    void the_name_is_gone_from_pages_files_and_later_backups_and_the_chain_holds() throws Exception {
        Path later = root.resolve("later");
        String kept;
        try (App app = Demo.startEmpty(folder)) {
            Visitor laptop = new Visitor(app.port(), "", 91);
            assertTrue(files(laptop).contains(name), "before");
            kept = Files.readString(folder.resolve("people.json"));
            var said = laptop.form("/people/erase", Map.of("person", id(laptop), "name", name));
            assertEquals(200, said.statusCode(), said.body());
            for (String page : PAGES) {
                var shown = laptop.get(page);
                assertEquals(200, shown.statusCode(), page);
                assertFalse(shown.body().contains(name), page);
            }
            assertFalse(files(laptop).contains(name), "files");
        }
        assertFalse(Files.readString(folder.resolve("people.json")).contains(name), "people.json");
        assertFalse(Files.readString(folder.resolve("journal.jsonl")).contains(name), "the journal never had it");
        Path made = Backup.make(folder, later, Instant.EPOCH).folder();
        assertFalse(Files.readString(made.resolve("people.json")).contains(name), "a later backup");
        Files.writeString(folder.resolve("people.json"), kept); // as after a kill between the line and the file
        try (App app = Demo.startEmpty(folder)) {
            assertFalse(
                    new Visitor(app.port(), "", 91).get("/prepare/crew").body().contains(name), "erased at start");
        }
        assertFalse(Files.readString(folder.resolve("people.json")).contains(name), "and from the file");
        assertTrue(new Verify(Catalogue.projection()).check(folder).records() > 0, "verify holds");
    }

    @Test
    void a_successor_on_the_crew_line_of_an_erased_person_is_a_person_of_their_own_and_stays() throws Exception {
        try (App app = Demo.startEmpty(folder)) {
            Visitor laptop = new Visitor(app.port(), "", 91);
            laptop.form("/people/erase", Map.of("person", id(laptop), "name", name));
            var forms = new FilledForms(laptop);
            assertEquals(
                    204,
                    forms.save("crew", forms.row("crew", "someone"), Map.of("name", "Wilma"))
                            .statusCode());
            assertTrue(laptop.get("/prepare/crew").body().contains("Wilma"), "at once");
        }
        try (App app = Demo.startEmpty(folder)) {
            String crew = new Visitor(app.port(), "", 91).get("/prepare/crew").body();
            assertTrue(crew.contains("Wilma") && !crew.contains(name), "and after a restart: " + crew);
        }
    }

    /** Of no crew, and named only where somebody answered for what was open. */
    @Test
    void an_adult_who_answered_keeps_the_name_when_the_program_starts_again_without_its_database() throws Exception {
        String attempt;
        try (App app = Demo.startEmpty(folder)) {
            Visitor laptop = new Visitor(app.port(), "", 97);
            attempt = CalledForTests.call(laptop);
            var passed = laptop.form(
                    "/attempt/gate", Map.of("attempt", attempt, "adult", "Mrs Sandmartin", "passed", "seen by myself"));
            assertEquals(200, passed.statusCode(), passed.body());
            assertTrue(laptop.get("/attempt/" + attempt).body().contains("Mrs Sandmartin"));
        }
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(f -> f.toString().contains(".mv.db")).toList()) {
                Files.delete(file);
            }
        }
        try (App app = Demo.startEmpty(folder)) {
            String told =
                    new Visitor(app.port(), "", 98).get("/attempt/" + attempt).body();
            assertTrue(told.contains("Mrs Sandmartin"), told);
        }
    }
}
