package org.skeinday.platform.http;

/** A room's pages: they register their own routes. */
@FunctionalInterface
public interface Room {
    void register(Routes routes);
}
