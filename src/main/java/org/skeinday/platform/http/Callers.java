package org.skeinday.platform.http;

import java.util.Optional;

/** Knows the devices that have joined. */
@FunctionalInterface
public interface Callers {
    /** The device whose session has this SHA-256, if it has joined and was not ended. */
    Optional<Caller> ofTokenHash(String tokenHash);
}
