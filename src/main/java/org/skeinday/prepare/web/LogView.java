package org.skeinday.prepare.web;

import java.util.List;

/** The flight log, in finished words. @param lacks what must still be done before it is complete */
public record LogView(
        String event, int asked, String signedBy, List<String> lacks, List<String> columns, List<List<String>> rows) {}
