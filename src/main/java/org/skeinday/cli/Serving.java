package org.skeinday.cli;

import java.io.IOException;
import java.net.BindException;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import org.skeinday.App;
import org.skeinday.device.web.Qr;
import org.skeinday.platform.folder.DataFolder;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.http.PortTaken;
import org.skeinday.platform.record.AlreadyRunning;
import org.skeinday.platform.record.OwnerOnly;
import org.skeinday.platform.record.WholeFile;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Commands that keep a server running. */
abstract class Serving extends Commands.OnFolder {
    static final int PORT_TAKEN = 3;
    private static final int USUAL_PORT = 8420;
    private static final String HOST = "[A-Za-z0-9]([A-Za-z0-9.-]{0,251}[A-Za-z0-9])?";

    @Option(names = "--port", converter = Serving.Port.class, description = "the last one used, at first " + USUAL_PORT)
    @Nullable
    Integer port;

    @Option(
            names = "--host",
            description = "the address or name that tablets are told, kept for the next start; auto picks one again")
    @Nullable
    String host;

    @Option(names = "--dev", description = "read templates from the source folder")
    boolean dev;

    @Option(
            names = "--open",
            description = "show the first page in this laptop's browser; where it runs already, the page of that one")
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

    /** Does the work, up to the end of the program where it comes to serve. */
    abstract int run(Stopping stopping) throws Exception;

    @Override
    public final Integer call() throws Exception {
        Stopping stopping = Stopping.fromNowOn(
                Pace.normal().close(), out(), spec.commandLine().getErr());
        try {
            return run(stopping);
        } finally {
            stopping.over();
        }
    }

    int serve(Path folder, Stopping stopping) throws Exception {
        if (stopping.isAsked()) {
            return 0;
        }
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
        if (stopping.isAsked()) {
            app.takeBackPin(); // nobody was told it
        } else {
            WholeFile.write(folder.resolve("port"), String.valueOf(app.port()));
            sayReady(app, folder, newPin ? app.renewPin() : app.newPin());
            app.onStop(() -> System.exit(0));
            if (open) {
                Opening.of("http://localhost:" + app.port() + "/");
            }
        }
        stopping.closing(app::close);
        new CountDownLatch(1).await(); // from here on only a signal ends the program
        return 0;
    }

    /** Written into codes that hang on walls, so it stays until somebody says otherwise. */
    private String host(Path folder) throws IOException {
        Path kept = folder.resolve("host");
        if (host == null) {
            String last = text(kept);
            return last.matches(HOST) ? last : ""; // what is none is picked again
        }
        if (host.equals("auto")) {
            Files.deleteIfExists(kept);
            return "";
        }
        if (!host.matches(HOST)) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--host must be a name or an address without port, for example 192.168.1.5, but was " + host);
        }
        OwnerOnly.makeFolder(folder);
        WholeFile.write(kept, host);
        return host;
    }

    /** Whatever its bytes are: a careless hand on a small file never keeps the day from starting. */
    private static String text(Path kept) throws IOException {
        return Files.exists(kept) ? new String(Files.readAllBytes(kept), StandardCharsets.ISO_8859_1).strip() : "";
    }

    private int port(Path folder) throws IOException {
        Path kept = folder.resolve("port");
        if (port != null) {
            return port;
        }
        String last = text(kept);
        return Port.isOne(last) ? Integer.parseInt(last) : USUAL_PORT; // an older program may have left it empty
    }

    private void sayReady(App app, Path folder, String pin) {
        out().println("Skeinday is ready.");
        out().println("  On this laptop:  http://localhost:" + app.port() + "/");
        if (app.invitation().isAlone()) {
            out().println("  For tablets:     no network: join one, then start again");
        } else {
            out().println("  For tablets:     " + app.joinLink());
            app.invitation().otherAddresses().forEach(other -> out().println("      or           " + other));
            out().println("  Or typed there:  " + app.invitation().address() + "/join and the code "
                    + app.invitation().typedCode());
            out().println("  One cannot join: http://localhost:" + app.port() + "/join/help");
        }
        out().println("  Data folder:     " + folder);
        out().println("  Stop:            Ctrl-C");
        if (!pin.isEmpty()) {
            out().println("  Coach's PIN:     " + pin + "   (shown this once; note it)");
        }
        if (app.invitation().isJoinCodeNew()) {
            out().println("  New join code:   the old one was lost. Devices that have joined stay; print what hangs on"
                    + " walls anew");
        }
        if (!app.invitation().isAlone()) {
            out().println(Qr.forTerminal(app.joinLink()));
        }
        out().flush();
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
                throw new Unreadable("'" + typed + "' is no port; name a number from 0 to " + MOST);
            }
            return Integer.valueOf(typed);
        }
    }
}
