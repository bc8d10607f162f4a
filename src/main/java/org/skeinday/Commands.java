package org.skeinday;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.BindException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import org.skeinday.device.web.Qr;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.http.PortTaken;
import org.skeinday.platform.record.AlreadyRunning;
import org.skeinday.platform.record.Json;
import org.skeinday.platform.record.OwnerOnly;
import org.skeinday.platform.record.Record;
import org.skeinday.platform.record.Verify;
import org.skeinday.platform.record.WholeFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** The commands that need the whole program. */
final class Commands {
    private static final int USUAL_PORT = 8420;
    private static final int PORT_TAKEN = 3;

    private Commands() {}

    static Object[] all() {
        List<Object> all = new ArrayList<>(List.of(new Serve(), new Demo(), new VerifyRecord(), new Rebuild()));
        all.addAll(2, List.of(Carrying.all(Clock.systemDefaultZone(), new SecureRandom())));
        all.addAll(List.of(Keeping.all()));
        return all.toArray();
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

    /** A port as it is typed. */
    static final class Port implements ITypeConverter<Integer> {
        private static final int MOST = 65_535;

        static boolean isOne(String typed) {
            return typed.matches("\\d{1,5}") && Integer.parseInt(typed) <= MOST;
        }

        @Override
        public Integer convert(String typed) {
            if (!isOne(typed)) {
                throw new TypeConversionException("'" + typed + "' is no port; name a number from 0 to " + MOST);
            }
            return Integer.valueOf(typed);
        }
    }

    /** Commands that keep a server running. */
    abstract static class Serving extends OnFolder {
        @Option(names = "--port", converter = Port.class, description = "the last one used, at first " + USUAL_PORT)
        @Nullable
        Integer port;

        @Option(
                names = "--host",
                description =
                        "the address or name that tablets are told, kept for the next start; auto picks one again")
        @Nullable
        String host;

        @Option(names = "--dev", description = "read templates from the source folder")
        boolean dev;

        @Option(
                names = "--open",
                description =
                        "show the first page in this laptop's browser; where it runs already, the page of that one")
        boolean open;

        @Option(names = "--new-pin", description = "make a new PIN for the coach and tell it once")
        boolean newPin;

        /** Whether another program listens there, asked before a new folder is made. Its own words, when it does. */
        boolean isBusy(Path folder, boolean newOne) throws IOException {
            int wanted = port(folder);
            if (wanted == 0 || !newOne) {
                return false; // what runs there may be this very folder: that is told by its lock
            }
            try (ServerSocket free = new ServerSocket(wanted)) {
                return !free.isBound();
            } catch (BindException e) {
                sayBusy(wanted);
                return true;
            }
        }

        private void sayBusy(int busy) {
            spec.commandLine()
                    .getErr()
                    .println("Port " + busy + " is in use. Name another one, for example --port " + (busy + 1) + ".");
        }

        int serve(Path folder) throws Exception {
            DataFolder.make(folder);
            App app;
            try {
                app = App.start(
                        new App.Settings(folder, port(folder), dev, Pace.normal(), host(folder)),
                        Clock.systemDefaultZone(),
                        new SecureRandom());
            } catch (AlreadyRunning e) {
                if (open && Opening.of(e.where())) {
                    return 0;
                }
                throw e;
            } catch (PortTaken e) {
                sayBusy(e.port());
                return PORT_TAKEN;
            }
            WholeFile.write(folder.resolve("port"), String.valueOf(app.port()));
            sayReady(app, folder, newPin ? app.renewPin(new SecureRandom()) : app.newPin());
            app.onStop(() -> System.exit(0));
            if (open) {
                Opening.of("http://localhost:" + app.port() + "/");
            }
            Stopping.when(
                    app::close, Pace.normal().close(), out(), spec.commandLine().getErr());
            new CountDownLatch(1).await(); // from here on only a signal ends the program
            return 0;
        }

        /** Written into codes that hang on walls, so it stays until somebody says otherwise. */
        private String host(Path folder) throws IOException {
            Path kept = folder.resolve("host");
            if (host == null) {
                return Files.exists(kept) ? Files.readString(kept).strip() : "";
            }
            if (host.equals("auto")) {
                Files.deleteIfExists(kept);
                return "";
            }
            if (!host.matches("[A-Za-z0-9]([A-Za-z0-9.-]{0,251}[A-Za-z0-9])?")) {
                throw new ParameterException(
                        spec.commandLine(),
                        "--host must be a name or an address without port, for example 192.168.1.5, but was " + host);
            }
            OwnerOnly.makeFolder(folder);
            WholeFile.write(kept, host);
            return host;
        }

        private int port(Path folder) throws IOException {
            Path kept = folder.resolve("port");
            if (port != null) {
                return port;
            }
            String last = Files.exists(kept) ? Files.readString(kept).strip() : "";
            return Port.isOne(last) ? Integer.parseInt(last) : USUAL_PORT; // an older program may have left it empty
        }

        private void sayReady(App app, Path folder, String pin) {
            out().println("Skeinday is ready.");
            out().println("  On this laptop:  http://localhost:" + app.port() + "/");
            if (app.isAlone()) {
                out().println("  For tablets:     no network: join one, then start again");
            } else {
                out().println("  For tablets:     " + app.joinLink());
                app.otherAddresses().forEach(other -> out().println("      or           " + other));
                out().println("  One cannot join: http://localhost:" + app.port() + "/join/help");
            }
            out().println("  Data folder:     " + folder);
            out().println("  Stop:            Ctrl-C");
            if (!pin.isEmpty()) {
                out().println("  Coach's PIN:     " + pin + "   (shown this once; note it)");
            }
            if (app.isJoinCodeNew()) {
                out().println(
                                "  New join code:   the old one was lost. Devices that have joined stay; print what hangs on"
                                        + " walls anew");
            }
            if (!app.isAlone()) {
                out().println(Qr.forTerminal(app.joinLink()));
            }
            out().flush();
        }
    }

    @Command(
            name = "serve",
            description = "Runs the server on this laptop.",
            mixinStandardHelpOptions = true,
            footer = {"", "Example:", "  serve --data my-season --port 7070"})
    static final class Serve extends Serving {
        @Override
        public Integer call() throws Exception {
            Path folder = makeable(folder("skeinday"));
            return isBusy(folder, !DataFolder.holdsRecord(folder)) ? PORT_TAKEN : serve(folder);
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
        public Integer call() throws Exception {
            Path folder = makeable(folder("skeinday-demo"));
            boolean setsAside = fresh && DataFolder.holdsRecord(folder);
            if (setsAside) {
                Record.refuseWhileRunning(folder);
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
            return serve(folder);
        }
    }

    /** Only what is a record, and one that nobody works on. */
    private static void setAside(Path folder) throws IOException {
        if (!DataFolder.holdsRecord(folder)) {
            throw new IllegalArgumentException(
                    folder + " holds no record of Skeinday, so it is not moved. Name another folder with --data.");
        }
        Record.refuseWhileRunning(folder);
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
            Verify.Whole whole = new Verify(Parts.projection()).check(folder);
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
            say(out(), new Verify(Parts.projection()).rebuild(existing(folder("skeinday")), Clock.systemUTC()), json);
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
