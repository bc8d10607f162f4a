package org.skeinday.paper.web;

import java.util.List;

/** Motor tags to print. @param moment that they stand for, in words */
public record TagsView(List<Tag> tags, String moment) {
    /** @param uses so far, in words; @param path of the code that opens the motor, as SVG; @param side of its view box */
    public record Tag(String tag, String batch, String direction, String size, String uses, String path, int side) {}
}
