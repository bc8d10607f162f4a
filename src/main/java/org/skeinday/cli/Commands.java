package org.skeinday.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.skeinday.Catalogue;
import org.skeinday.platform.folder.DataFolder;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Json;
import org.skeinday.platform.record.OwnerOnly;
import org.skeinday.platform.record.Verify;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The commands that need the whole program. */
public final class Commands {
    private static final List<String> NAMES = List.of(
            "serve", "demo", "import", "export", "verify", "rebuild", "backup", "restore", "lost-people", "preflight");

    private Commands() {}

    public static MoreCommands all() {
        return new MoreCommands() {
            @Override
            public List<String> names() {
                return NAMES;
            }

            @Override
            public Object make(String name) {
                return made(name);
            }
        };
    }

    private static Object made(String name) {
        switch (name) {
            case "serve":
                return new Serve();
            case "demo":
                return new Demo();
            case "import":
                return new ExchangeCommands.Import(Clock.systemDefaultZone(), new SecureRandom());
            case "export":
                return new ExchangeCommands.Export(Clock.systemDefaultZone());
            case "verify":
                return new VerifyRecord();
            case "rebuild":
                return new Rebuild();
            case "backup":
                return new BackupCommands.BackUp();
            case "restore":
                return new BackupCommands.Restore();
            case "lost-people":
                return new LostPeopleCommand(Clock.systemUTC(), new SecureRandom());
            case "preflight":
                return new BackupCommands.PreflightCheck();
            default:
                throw new IllegalArgumentException("There is no command " + name);
        }
    }

    /** What these commands share. */
    abstract static class OnFolder implements Callable<Integer> {
        @Spec
        @SuppressWarnings("NullAway.Init") // picocli sets it
        CommandSpec spec;

        @Option(names = "--data", description = "the data folder; the system's usual place when left out")
        @Nullable
        Path data;

        Path folder(String usual) {
            if (data != null && Files.isRegularFile(data)) {
                throw new ParameterException(
                        spec.commandLine(), data + " is a file, not a folder: name a folder with --data.");
            }
            return (data == null ? DataFolder.usual(usual) : data).toAbsolutePath();
        }

        /** The same folder, which need not be there yet. */
        Path makeable(Path folder) throws IOException {
            Optional<String> why = DataFolder.whyNot(folder);
            if (why.isPresent()) {
                throw new IOException(why.get());
            }
            return folder;
        }

        /** The same folder, when there is a record in it. */
        Path existing(Path folder) {
            if (!DataFolder.holdsRecord(folder)) {
                throw new ParameterException(
                        spec.commandLine(), "There is no record in " + folder + ". Name its folder with --data.");
            }
            return folder;
        }

        PrintWriter out() {
            return spec.commandLine().getOut();
        }
    }

    @Command(
            name = "serve",
            description = "Runs the server on this laptop.",
            mixinStandardHelpOptions = true,
            footer = {"", "Example:", "  serve --data my-season --port 7070"})
    static final class Serve extends Serving {
        @Override
        int run(Stopping stopping) throws Exception {
            Path folder = makeable(folder("skeinday"));
            return isBusy(folder, !DataFolder.holdsRecord(folder)) ? PORT_TAKEN : serve(folder, stopping);
        }
    }

    @Command(
            name = "demo",
            description = "Runs an invented event in a folder of its own; its first window opens in 20 minutes.",
            mixinStandardHelpOptions = true,
            footer = {"", "Example:", "  demo", "  demo --fresh"})
    static final class Demo extends Serving {
        @Option(names = "--fresh", description = "set the old demo aside and begin anew")
        boolean fresh;

        @Override
        int run(Stopping stopping) throws Exception {
            Path folder = makeable(folder("skeinday-demo"));
            boolean setsAside = fresh && DataFolder.holdsRecord(folder);
            if (setsAside) {
                ActStore.refuseWhileRunning(folder);
            }
            if (isBusy(folder, setsAside || !DataFolder.holdsRecord(folder))) {
                return PORT_TAKEN;
            }
            if (fresh && Files.exists(folder)) {
                setAside(folder);
            }
            Path journal = folder.resolve("journal.jsonl");
            if (!Files.exists(journal) || Files.size(journal) == 0) { // a first start may have been cut short
                DemoDay.load(folder, Clock.systemDefaultZone(), new SecureRandom());
            }
            return serve(folder, stopping);
        }
    }

    /** Only what is a record, and one that nobody works on. */
    private static void setAside(Path folder) throws IOException {
        if (!DataFolder.holdsRecord(folder)) {
            throw new IllegalArgumentException(
                    folder + " holds no record of Skeinday, so it is not moved. Name another folder with --data.");
        }
        if (OwnerOnly.isAmongOthers(folder)) {
            throw new IllegalArgumentException("Things of others are in " + folder
                    + ", so it is not moved. Name another folder for the demo with --data.");
        }
        ActStore.refuseWhileRunning(folder);
        Files.move(
                folder,
                folder.resolveSibling(
                        folder.getFileName() + "-" + Clock.systemUTC().millis()));
    }

    @Command(
            name = "verify",
            description = "Checks the record: the chain, and that the database holds just that.",
            mixinStandardHelpOptions = true,
            footer = {"", "Example:", "  verify --data my-season"})
    static final class VerifyRecord extends OnFolder {
        @Option(names = "--json", description = "one JSON object")
        boolean json;

        @Override
        public Integer call() throws Exception {
            Path folder = existing(folder("skeinday"));
            Verify.Whole whole = new Verify(Catalogue.projection()).check(folder);
            say(out(), whole, json);
            return 0;
        }
    }

    @Command(
            name = "rebuild",
            description = "Sets the database aside and builds it anew from the journal.",
            mixinStandardHelpOptions = true,
            footer = {"", "Example:", "  rebuild --data my-season"})
    static final class Rebuild extends OnFolder {
        @Option(names = "--json", description = "one JSON object")
        boolean json;

        @Override
        public Integer call() throws Exception {
            say(
                    out(),
                    new Verify(Catalogue.projection()).rebuild(existing(folder("skeinday")), Clock.systemUTC()),
                    json);
            return 0;
        }
    }

    private static void say(PrintWriter out, Verify.Whole whole, boolean json) {
        if (json) {
            out.println(Json.MAPPER
                    .createObjectNode()
                    .put("records", whole.records())
                    .put("head", whole.head())
                    .put("note", whole.note()));
            return;
        }
        out.println(whole.records() + " records, head " + (whole.head().isEmpty() ? "none" : whole.head()));
        if (!whole.note().isEmpty()) {
            out.println(whole.note());
        }
    }
}
