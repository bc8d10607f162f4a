package org.skeinday.cli;

import java.io.IOException;
import java.util.List;
import java.util.Locale;

/** Shows a page in the laptop's own browser, as a double click on it would. */
final class Opening {
    private Opening() {}

    /** Whether the system took the command; what it then does is its own. */
    static boolean of(String address) {
        return of(address, System.getProperty("os.name", ""));
    }

    static boolean of(String address, String system) {
        try {
            new ProcessBuilder(command(address, system))
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return true;
        } catch (IOException e) {
            return false; // no desktop: the address was printed
        }
    }

    static List<String> command(String address, String system) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.contains("win")) {
            return List.of("rundll32", "url.dll,FileProtocolHandler", address);
        }
        return List.of(name.contains("mac") ? "open" : "xdg-open", address);
    }
}
