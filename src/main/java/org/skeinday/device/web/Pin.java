package org.skeinday.device.web;

/** The coach's PIN. */
@FunctionalInterface
public interface Pin {
    boolean check(String typed);
}
