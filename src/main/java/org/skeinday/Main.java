package org.skeinday;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.skeinday.cli.Commands;
import org.skeinday.cli.Skeinday;
import org.skeinday.platform.folder.DataFolder;
import org.skeinday.platform.http.Rehearsal;

/** Starts Skeinday from the command line. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        var out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
        var err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        System.setProperty(Skeinday.USUAL_FOLDER, DataFolder.usual("skeinday").toString());
        if (args.length > 0 && (args[0].equals("serve") || args[0].equals("demo"))) {
            Rehearsal.beside();
        }
        int code = Skeinday.run(args, out, err, Commands.all());
        out.flush();
        err.flush();
        System.exit(code);
    }
}
