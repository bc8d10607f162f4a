package org.skeinday;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.skeinday.cli.Skeinday;

/** Starts Skeinday from the command line. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        var out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
        var err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        System.setProperty(Skeinday.USUAL_FOLDER, DataFolder.usual("skeinday").toString());
        int code = Skeinday.run(args, out, err, Commands.all());
        out.flush();
        err.flush();
        System.exit(code);
    }
}
