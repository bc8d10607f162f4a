package org.skeinday.platform.record;

/** Where acts go: the one writer, as pages and commands see it. */
public interface Acts {
    /** Waits until the act is saved, refused, or 10 s have passed. */
    Answer submit(Act act);
}
