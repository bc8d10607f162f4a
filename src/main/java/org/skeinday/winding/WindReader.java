package org.skeinday.winding;

/** Fact {@code wind.reader}: another device reads this wind from now on; the first one's taps still count. */
public record WindReader(String windId, String device) {
    public WindReader {
        Limit.filled("The wind", windId);
        Limit.filled("The device", device);
    }
}
