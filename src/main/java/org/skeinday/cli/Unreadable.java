package org.skeinday.cli;

/**
 * What is wrong with an option's value, in words for people. Unlike picocli's own exception for this it is kept as the
 * cause, so that the option can be named beside it without taking another sentence apart.
 */
final class Unreadable extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    Unreadable(String message) {
        super(message);
    }
}
