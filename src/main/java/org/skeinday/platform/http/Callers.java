package org.skeinday.platform.http;

import java.util.Optional;

/** Knows which devices have joined. */
@FunctionalInterface
public interface Callers {
    /** The device that was given this token when it joined; empty when unknown or ended. */
    Optional<Caller> ofToken(String token);

    /** The machine that runs the server, for who sits at it without having joined. */
    default Caller laptop() {
        return Caller.laptop();
    }

    /** Told of each request from another machine. @param address where it came from */
    default void heard(String address) {}
}
