package org.skeinday.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The root of the command line. */
@Command(
        name = "skeinday",
        description = "Runs a day of rubber-powered indoor rotorcraft: motors, winding, attempts, official times.",
        mixinStandardHelpOptions = true,
        versionProvider = Skeinday.Version.class,
        footer = {
            "",
            "Examples:",
            "  skeinday demo",
            "  skeinday serve --data my-season",
            "  skeinday import files --data my-season",
            "  skeinday export files-out --data my-season",
            "  skeinday winding --loop 18.5in --breaking-turns 2700 --ratio 10 --use 2 --finish 11in",
            "  skeinday official-time --take middle --if-two longer --round down --to 0.1 1:52.84 1:52.91 1:52.79",
            "  skeinday break-risk winds.csv --at 2300 --loop 18.5in --mass 1.7g",
            "  skeinday curve readings.csv --at 1200 --mass 1.7g",
            "  skeinday flight --model-mass 4.1g --motor-mass 1.64g --diameter 355mm --rotors 2 --merit 0.45 --hover-rate 9"
                    + " --curve unwinding.csv --turns 2230",
            "  skeinday dayplan day.json --json",
            "",
            "Data folder: ${sys:" + Skeinday.USUAL_FOLDER + ":-the system's usual place}, unless --data names another.",
            "Exit codes: 0 ok, 2 usage, 3 port, 4 already running, 5 data damaged, 6 disk or permission."
        })
public final class Skeinday implements Runnable {
    /** The system property that tells the help where data is kept when nobody says otherwise. */
    public static final String USUAL_FOLDER = "skeinday.usual";

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = Skeinday.class.getPackage().getImplementationVersion();
            return new String[] {"Skeinday " + (version == null ? "(from its build folder)" : version)};
        }
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Name a command, for example: skeinday demo (or --help)");
    }

    /** Runs the command line. @param more commands that need the whole program @return the exit code */
    public static int run(String[] args, PrintWriter out, PrintWriter err, MoreCommands... more) {
        CommandLine line = new CommandLine(new Skeinday());
        List<MoreCommands> all = new ArrayList<>(List.of(more));
        all.add(new Computing());
        addWhatIsAskedFor(line, args, all);
        TypedNumber.useIn(line);
        line.setOut(out);
        line.setErr(err);
        line.setParameterExceptionHandler((e, given) -> {
            err.println(Complaint.of(e, List.of(given)));
            err.flush();
            return 2;
        });
        line.setExecutionExceptionHandler((e, command, result) -> {
            err.println(String.valueOf(e.getMessage()).replace('\n', ' '));
            err.flush();
            return e instanceof IllegalArgumentException ? 2 : ExitCode.of(e);
        });
        return line.execute(args);
    }

    /** The one command that is named first; all of them where none is, so that the help and a complaint know them. */
    private static void addWhatIsAskedFor(CommandLine line, String[] args, List<MoreCommands> all) {
        String first = args.length == 0 ? "" : args[0];
        boolean known = all.stream().anyMatch(some -> some.names().contains(first));
        for (MoreCommands some : all) {
            for (String name : some.names()) {
                if (!known || name.equals(first)) {
                    line.addSubcommand(name, some.make(name));
                }
            }
        }
    }
}
