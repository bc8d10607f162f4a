package org.skeinday.prepare.web;

import java.util.List;

/** What can be taken out. */
public record ExportView(List<Row> rows) {
    /** @param query of its addresses, empty for everything */
    public record Row(String what, String query) {}
}
