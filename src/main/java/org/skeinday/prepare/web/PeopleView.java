package org.skeinday.prepare.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Everybody whose name is kept. @param said what was just done, empty for nothing */
public record PeopleView(List<Person> people, String said) {
    /** @param known as what @param wrong why this name was not erased, empty when nothing was wrong */
    public record Person(String id, String name, String known, String wrong) {
        /** The name as it stands in an address. */
        public String inAddress() {
            return URLEncoder.encode(name, StandardCharsets.UTF_8);
        }
    }
}
