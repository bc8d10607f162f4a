package org.skeinday;

import gg.jte.TemplateEngine;
import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.skeinday.dayplan.web.SolverFolder;
import org.skeinday.device.Device;
import org.skeinday.device.TypedCode;
import org.skeinday.device.store.DeviceStore;
import org.skeinday.device.web.Addresses;
import org.skeinday.device.web.DevicePages;
import org.skeinday.device.web.JoinView;
import org.skeinday.device.web.KeptCodes;
import org.skeinday.device.web.KeptPlaces;
import org.skeinday.device.web.KnownTokens;
import org.skeinday.device.web.LaptopPages;
import org.skeinday.device.web.LentLaptop;
import org.skeinday.device.web.Network;
import org.skeinday.device.web.PinGate;
import org.skeinday.device.web.Sessions;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.folder.Backups;
import org.skeinday.platform.folder.LogFile;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.Callers;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.PinHash;
import org.skeinday.platform.http.RequestRate;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.http.Server;
import org.skeinday.platform.live.ClockWatch;
import org.skeinday.platform.live.LiveHub;
import org.skeinday.platform.live.LiveRoutes;
import org.skeinday.platform.live.TapRules;
import org.skeinday.platform.record.Act;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Json;
import org.skeinday.platform.record.OwnerOnly;
import org.skeinday.platform.record.RandomHex;
import org.skeinday.platform.record.Writer;
import org.skeinday.platform.record.WriterSettings;
import org.skeinday.prepare.web.PrepareContext;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The running program, wired by hand: the one class beside Main that knows everything. */
public final class App implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(App.class);

    /** So that the answer to who stopped it goes out. */
    private static final long STOP_MS = 300;

    private final ScheduledExecutorService clockWatch;
    private final ScheduledExecutorService backupTime;
    private final ActStore record;
    private final LogFile log;
    private final Writer writer;
    private final LiveHub live;
    private final Server server;
    private final LentLaptop lent;
    private final KnownTokens tokens;
    private final Addresses addresses;
    private final Network network;
    private final Backups backups;
    private final KeptCodes codes;
    private final String newPin;
    private volatile Runnable stopper = () -> {};

    /**
     * What the program is started with.
     *
     * @param port 0 for any free one
     * @param host the name or address that tablets are told; empty to pick one
     */
    public record Settings(Path data, int port, boolean dev, Pace pace, String host) {
        /** With an address that is picked. */
        public Settings(Path data, int port, boolean dev, Pace pace) {
            this(data, port, dev, pace, "");
        }
    }

    /** Opens the data folder and starts listening. */
    public static App start(Settings settings, Clock clock, SecureRandom random) throws IOException {
        ActStore record = ActStore.open(settings.data(), Catalogue.projection(), clock);
        LogFile log = LogFile.in(settings.data(), LogFile.FILE_BYTES);
        try {
            return new App(record, log, settings, clock, random);
        } catch (IOException | RuntimeException e) {
            log.close();
            record.close();
            throw e;
        }
    }

    private App(ActStore record, LogFile log, Settings settings, Clock clock, SecureRandom random) throws IOException {
        this.record = record;
        this.log = log;
        this.live = new LiveHub(settings.pace(), RandomHex.of(random));
        boolean servedBefore = !record.people().pinHash().isEmpty();
        this.codes =
                new KeptCodes(settings.data(), servedBefore, clock, random, () -> live.publish(Set.of("devices"), 0));
        if (codes.isLinkNew()) {
            LOG.warn("The join code was missing or no code: a new one was made");
        }
        this.addresses = new Addresses(settings.host());
        this.network = new Network(new KeptPlaces(addresses, this::port, settings.data()), clock);
        this.backups = new Backups(settings.data(), clock);
        this.lent = new LentLaptop(() -> record.read(DeviceStore::isLaptopLent));
        this.tokens = new KnownTokens(token -> record.read((Tx tx) -> DeviceStore.ofToken(tx, token)));
        this.writer = new Writer(record, Catalogue.actKinds(record), clock, WriterSettings.normal(), this::publish);
        TemplateEngine engine = settings.dev() ? Page.fromFolder(Path.of("src/main/jte")) : Page.precompiled();
        Page page = new Page(engine, Catalogue.BAR, settings.pace(), record.people()::name);
        page.sayTrouble(() -> (writer.trouble() + " " + backups.trouble()).strip());
        page.sayMoment(live::moment);
        page.sayHelp(Guide.ALL);
        FormActs forms = new FormActs(writer, clock);
        PinGate pins = new PinGate(typed -> PinHash.fits(typed, record.people().pinHash()), clock);
        Sessions sessions = new Sessions(known(), clock);
        SolverFolder solver = SolverFolder.in(settings.data());
        var rooms = new Pages(
                new PrepareContext(record, forms, page, clock),
                settings.pace(),
                pins,
                solver::load,
                () -> RandomHex.of(random),
                this::address);
        try {
            this.server = Server.start(
                    new Server.Settings(
                            "0.0.0.0",
                            settings.port(),
                            addresses::names,
                            () -> RandomHex.of(random).substring(0, 8),
                            settings.pace(),
                            new RequestRate(System::nanoTime)),
                    callers(sessions),
                    page,
                    routes -> {
                        rooms.open(routes);
                        LiveRoutes.register(
                                routes, live, writer, clock, new TapRules(Catalogue.TAPS, this::deviceOfId));
                        new LaptopPages(page, () -> freshPin(record, random), this::stopSoon).register(routes);
                        DevicePages.register(routes, page, writer, clock, door(random, pins, sessions));
                    });
        } catch (RuntimeException e) {
            writer.close();
            throw e;
        }
        this.clockWatch = Executors.newSingleThreadScheduledExecutor();
        new ClockWatch(clock, System::nanoTime, by -> jumped(by, clock, RandomHex.of(random)))
                .every(settings.pace().clockLook().toMillis(), clockWatch);
        this.backupTime = Executors.newSingleThreadScheduledExecutor(); // a slow stick holds up nothing else
        backups.everyHour(backupTime, record::keepCopy);
        this.newPin = makePin(record, random); // after the port is known to be free: it is told once
        record.runningAt("http://localhost:" + server.port());
        OwnerOnly.tightenAll(settings.data()); // what the database and the log have made meanwhile
    }

    /** Before the answer goes out: who has one must not be served with the old rights. */
    private void rightsChanged(String device) {
        lent.changed();
        live.endStreamsOf(device);
    }

    private void publish(Set<String> topics, long n) {
        if (topics.contains("devices")) {
            lent.changed();
            tokens.changed();
        }
        live.publish(topics, n);
    }

    private void jumped(long byMs, Clock clock, String id) {
        writer.submit(new Act(
                id,
                "clock.jumped",
                Caller.LAPTOP,
                "",
                clock.instant(),
                Json.MAPPER.createObjectNode().put("byMs", byMs)));
    }

    private DevicePages.Door door(SecureRandom random, PinGate pins, Sessions sessions) {
        return new DevicePages.Door(
                codes,
                network,
                () -> RandomHex.of(random),
                this::crew,
                () -> record.read(DeviceStore::joined),
                this::rightsChanged,
                live::isConnected,
                pins,
                sessions,
                lent);
    }

    private Sessions.Known known() {
        return new Sessions.Known(
                tokens::ofToken,
                token -> record.read((Tx tx) -> DeviceStore.ofEarlier(tx, token)),
                number -> record.read((Tx tx) -> DeviceStore.ofJoining(tx, number)),
                token -> record.read((Tx tx) -> DeviceStore.endedLinkHash(tx, token)));
    }

    private Callers callers(Sessions sessions) {
        return new Callers() {
            @Override
            public Optional<Caller> ofToken(String token) {
                return sessions.ofToken(token).map(App::caller);
            }

            @Override
            public void heard(String address) {
                network.heard(address);
            }

            @Override
            public Caller laptop() {
                return lent.getAsBoolean() ? Caller.lentLaptop() : Caller.laptop();
            }
        };
    }

    private Optional<Caller> deviceOfId(String id) {
        return record.read((Tx tx) -> DeviceStore.everOfId(tx, id)).map(App::caller);
    }

    private static Caller caller(Device device) {
        return new Caller(device.id(), device.person(), Role.ofWord(device.role()), false);
    }

    private List<JoinView.Person> crew() {
        return record.people().names().entrySet().stream()
                .map(e -> new JoinView.Person(e.getKey(), e.getValue()))
                .sorted(Comparator.comparing(JoinView.Person::name))
                .toList();
    }

    /** Made at the first start, or where what is kept of it is none, and told once; empty afterwards. */
    private static String makePin(ActStore record, SecureRandom random) throws IOException {
        if (PinHash.isWhole(record.people().pinHash())) {
            return "";
        }
        return freshPin(record, random);
    }

    private static String freshPin(ActStore record, SecureRandom random) throws IOException {
        String pin = String.format("%06d", random.nextInt(1_000_000));
        record.people().keepPin(PinHash.of(pin, random));
        return pin;
    }

    public int port() {
        return server.port();
    }

    /** The address that tablets use: the first private one, else the laptop's own. */
    public String address() {
        return "http://" + addresses.best() + ":" + server.port();
    }

    public String joinLink() {
        return address() + "/join#" + codes.link().text();
    }

    /** Whether the join code was lost and this start made another: what hangs on walls leads nowhere any more. */
    public boolean isJoinCodeNew() {
        return codes.isLinkNew();
    }

    /** What is typed in place of the link, as it is read aloud. */
    public String typedCode() {
        return TypedCode.shown(codes.typed());
    }

    /** Whether this laptop has no address that a tablet could reach. */
    public boolean isAlone() {
        return addresses.forTablets().isEmpty();
    }

    /** Addresses beside the first, for a laptop in several networks. */
    public List<String> otherAddresses() {
        return addresses.forTablets().stream()
                .skip(1)
                .map(address -> "http://" + address + ":" + server.port())
                .toList();
    }

    /** The coach's PIN when this start has made it, else empty. */
    public String newPin() {
        return newPin;
    }

    /** Forgets the PIN that this start has made and nobody was told: the next start makes another, and tells it. */
    public void takeBackPin() throws IOException {
        if (!newPin.isEmpty()) {
            record.people().keepPin("");
        }
    }

    /** What stops the program when the coach says so on a page; nothing where nobody set it. */
    public void onStop(Runnable deed) {
        stopper = deed;
    }

    private void stopSoon() {
        clockWatch.schedule(() -> new Thread(stopper, "stop").start(), STOP_MS, TimeUnit.MILLISECONDS);
    }

    /** Another PIN for the coach in place of the one that was lost: told once, as at the first start. */
    public String renewPin(SecureRandom random) throws IOException {
        return freshPin(record, random);
    }

    /** Pages that are connected now. */
    public int openStreams() {
        return live.openStreams();
    }

    /** Who may use each route that is served. */
    public List<Routes.Right> rights() {
        return server.rights();
    }

    public Writer writer() {
        return writer;
    }

    public Map<String, String> names() {
        return record.people().names();
    }

    /** Takes no more, writes what waits, tells the clients, closes. */
    @Override
    public void close() throws IOException {
        clockWatch.shutdown();
        backupTime.shutdown();
        live.close();
        server.close();
        writer.close();
        backups.now();
        record.close();
        log.close();
    }
}
