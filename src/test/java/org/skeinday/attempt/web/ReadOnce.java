package org.skeinday.attempt.web;

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
            html = who.get(address).body();
            read.put(address, html);
        }
        return html;
    }
}
