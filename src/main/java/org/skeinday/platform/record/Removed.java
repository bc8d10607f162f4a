package org.skeinday.platform.record;

/** The body of facts {@code x.removed}: what was entered by mistake and nothing hangs on. */
public record Removed(String id) {}
