package org.skeinday.attempt.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.net.http.HttpResponse;
import java.util.HashMap;
import java.util.Map;
import org.skeinday.Visitor;

/** The pages of one moment: each is asked for once, whoever looks at it. */
final class ReadOnce {
    private final Visitor who;
    private final Map<String, String> read = new HashMap<>();

    ReadOnce(Visitor who) {
        this.who = who;
    }

    String at(String address) throws Exception {
        String html = read.get(address);
        if (html == null) {
            HttpResponse<String> answer = who.get(address);
            boolean withheld = answer.statusCode() == 403; // a page that this device has no right to says nothing
            assertEquals(withheld ? 403 : 200, answer.statusCode(), address);
            html = withheld ? "" : answer.body();
            read.put(address, html);
        }
        return html;
    }
}
