package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Visitor;

/** Reading changes nothing, whatever is read and by whom. */
@Timeout(120)
class ReadingWebTest {
    @TempDir
    Path root;

    @Test
    void reading_every_page_changes_nothing() throws Exception {
        try (House house = new House(root.resolve("day"))) {
            Visitor coach = house.joined("coach");
            String before = house.head();
            Crawl crawl = Crawl.of(house, coach);
            assertTrue(crawl.pages().size() > 90, "pages: " + crawl.pages().size());
            assertEquals(List.of(), crawl.troubles());
            List<String> wrong = new ArrayList<>();
            for (String path : crawl.pages().keySet().stream().limit(80).toList()) { // each route, and some links
                HttpResponse<String> head = house.laptop.bare("HEAD", path, "");
                int status = crawl.pages().get(path).statusCode();
                if (!head.body().isEmpty() || head.statusCode() >= 500) {
                    wrong.add(path + ": GET " + status + ", HEAD " + head.statusCode() + " " + head.body());
                }
            }
            assertEquals(List.of(), wrong);
            assertEquals(before, house.head());
        }
    }
}
