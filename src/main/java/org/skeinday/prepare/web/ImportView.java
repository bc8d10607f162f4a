package org.skeinday.prepare.web;

import java.util.List;

/**
 * What files would bring or have brought.
 *
 * @param words empty before any was looked at
 * @param act that is still being written, to be asked about; empty when there is nothing to wait for
 * @param far how far that has come, in words
 */
public record ImportView(
        String words, List<String> rows, List<String> errors, List<String> known, String act, String far) {
    ImportView(String words, List<String> rows, List<String> errors, List<String> known) {
        this(words, rows, errors, known, "", "");
    }
}
