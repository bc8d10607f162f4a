package org.skeinday.paper.web;

import java.util.List;

/** Motor tags to print. */
public record TagsView(List<Tag> tags) {
    /** @param path of the code that opens the motor, as SVG; @param side of its view box */
    public record Tag(String tag, String batch, String direction, String size, String path, int side) {}
}
