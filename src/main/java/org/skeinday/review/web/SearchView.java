package org.skeinday.review.web;

import java.util.List;

/** What was found. @param asked what was typed, empty before anything was */
public record SearchView(String asked, List<Hit> hits, boolean all) {
    /** @param address where it is */
    public record Hit(String kind, String title, String words, String address) {}
}
