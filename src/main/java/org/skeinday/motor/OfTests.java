package org.skeinday.motor;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** What is drawn once for a number of motors and breaks and then kept: the same numbers always give the same. */
final class OfTests<T> {
    /** More are of batches that nobody asks about any more. */
    private static final int MOST_KEPT = 64;

    /** Draws for so many motors and breaks. */
    interface Drawing<T> {
        T of(int motors, int breaks);
    }

    private record Size(int motors, int breaks) {}

    private final Map<Size, T> drawn = new ConcurrentHashMap<>();
    private final Drawing<T> drawing;

    OfTests(Drawing<T> drawing) {
        this.drawing = drawing;
    }

    T of(int motors, int breaks) {
        if (drawn.size() >= MOST_KEPT) {
            drawn.clear();
        }
        return drawn.computeIfAbsent(new Size(motors, breaks), size -> drawing.of(size.motors, size.breaks));
    }
}
