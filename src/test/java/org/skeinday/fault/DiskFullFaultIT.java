package org.skeinday.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Program;
import org.skeinday.Visitor;
import org.skeinday.platform.record.Json;

@Timeout(120)
class DiskFullFaultIT {
    private static final String BANNER = "disk is nearly full";

    @TempDir
    Path root;

    @Test
    void on_a_full_disk_nothing_is_acknowledged_every_page_says_so_and_reading_and_writing_go_on() throws Exception {
        try (SmallDisk disk = SmallDisk.mount(root.resolve("disk"), 100)) {
            Path data = disk.folder().resolve("day");
            assertEquals(0, Program.run("import", "demo-data", "--data", data.toString()));
            int port = Program.freePort();
            try (Program program = Program.serve(data, port)) {
                Visitor laptop = new Visitor(port, "", 1);
                String attempt = CalledForTests.call(laptop);
                CalledForTests.letWind(laptop, attempt);
                disk.leave(66 << 20);
                assertEquals(
                        "saved",
                        answer(laptop, tap(laptop.newId(), attempt))
                                .path("state")
                                .asText());
                disk.leave(62 << 20); // two on each side: the program's own files move a little
                assertEquals(
                        "later",
                        answer(laptop, tap(laptop.newId(), attempt))
                                .path("state")
                                .asText());
                disk.leave(8 << 20);
                ObjectNode tap = tap(laptop.newId(), attempt);
                assertEquals("later", answer(laptop, tap).path("state").asText());
                assertEquals(
                        507,
                        laptop.form("/attempt/move", java.util.Map.of("attempt", attempt, "to", "winding"))
                                .statusCode());
                for (String page : java.util.List.of("/", "/timing", "/results", "/devices")) {
                    var shown = laptop.get(page);
                    assertEquals(200, shown.statusCode(), page);
                    assertTrue(shown.body().contains(BANNER), page);
                }
                disk.giveBack();
                assertEquals("saved", answer(laptop, tap).path("state").asText());
                assertFalse(laptop.get("/").body().contains(BANNER));
                program.kill();
            }
            assertEquals(0, Program.run("verify", "--data", data.toString()));
        }
    }

    private static ObjectNode tap(String id, String attempt) {
        ObjectNode content = Json.MAPPER.createObjectNode();
        content.put("attempt", attempt).put("slot", 1).put("ms", 61_210);
        return Visitor.tap(id, "watch.landing", content);
    }

    private static JsonNode answer(Visitor laptop, ObjectNode tap) throws Exception {
        return laptop.taps(Json.MAPPER.createArrayNode().add(tap)).path(0);
    }
}
