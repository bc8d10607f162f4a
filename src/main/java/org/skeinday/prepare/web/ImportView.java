package org.skeinday.prepare.web;

import java.util.List;

/** What files would bring or have brought. @param words empty before any was looked at */
public record ImportView(String words, List<String> rows, List<String> errors, List<String> known) {}
