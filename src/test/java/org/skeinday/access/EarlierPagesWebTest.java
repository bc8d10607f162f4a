package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.EarlierJournals;
import org.skeinday.Visitor;
import org.skeinday.platform.http.Routes;

/** A record that a program of before wrote opens on every page, each link followed, with nothing missing from any of them. */
@Timeout(180)
class EarlierPagesWebTest {
    /** As a page says it of a part that could not be made. */
    private static final String MISSING = "cannot be shown just now";

    @TempDir
    Path root;

    static Stream<String> days() {
        return EarlierJournals.fullest(6);
    }

    @ParameterizedTest
    @MethodSource("days")
    void every_page_of_a_record_of_before_opens_whole(String day) throws Exception {
        Path folder = Demo.withPin(EarlierJournals.into(root.resolve("day"), day));
        try (App app = Demo.startEmpty(folder)) {
            List<String> routes = app.rights().stream()
                    .filter(right -> right.method().equals("GET"))
                    .map(Routes.Right::path)
                    .filter(path -> !path.contains("{") && !path.contains("<"))
                    .toList();
            Crawl crawl = Crawl.from(routes, new Visitor(app.port(), "", 262));
            List<String> wrong = new ArrayList<>(crawl.troubles());
            for (Map.Entry<String, HttpResponse<String>> page : crawl.pages().entrySet()) {
                if (page.getValue().body().contains(MISSING)) {
                    wrong.add("missing from " + page.getKey());
                }
            }
            assertEquals(List.of(), wrong);
            assertTrue(crawl.pages().size() > 60, crawl.pages().size() + " pages");
        }
    }
}
