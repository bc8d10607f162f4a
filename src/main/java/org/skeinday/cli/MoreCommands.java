package org.skeinday.cli;

import java.util.List;

/**
 * Commands that are made only when somebody asks for them: each reads its own options by reflection, which a start has no
 * time for.
 */
public interface MoreCommands {
    /** In the order in which the help tells them. */
    List<String> names();

    /** @param name one of the {@link #names()} */
    Object make(String name);
}
