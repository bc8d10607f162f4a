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
import org.skeinday.attempt.web.UnitsAtHand;
import org.skeinday.dayplan.web.SolverFolder;
import org.skeinday.device.store.DeviceStore;
import org.skeinday.device.web.Addresses;
import org.skeinday.device.web.CoachPin;
import org.skeinday.device.web.DeviceCallers;
import org.skeinday.device.web.DevicePages;
import org.skeinday.device.web.Invitation;
import org.skeinday.device.web.JoinView;
import org.skeinday.device.web.KeptCodes;
import org.skeinday.device.web.KeptPlaces;
import org.skeinday.device.web.KnownTokens;
import org.skeinday.device.web.LaptopPages;
import org.skeinday.device.web.LentLaptop;
import org.skeinday.device.web.Network;
import org.skeinday.device.web.PinGate;
import org.skeinday.device.web.Sessions;
import org.skeinday.paper.web.Guide;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.folder.Backups;
import org.skeinday.platform.folder.LogFile;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.RequestRate;
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
    private final Network network;
    private final Backups backups;
    private final KeptCodes codes;
    private final Invitation invitation;
    private final CoachPin pin;
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
        Addresses addresses = new Addresses(settings.host());
        this.invitation = new Invitation(addresses, codes, this::port);
        this.pin = new CoachPin(record.people(), settings.pace().pinRounds(), random);
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
        PinGate pins = new PinGate(pin::fits, clock);
        Sessions sessions = new Sessions(Sessions.Known.in(record, tokens), clock);
        SolverFolder solver = SolverFolder.in(settings.data());
        var rooms = new Pages(
                new PrepareContext(record, forms, page, clock, pins),
                settings.pace(),
                pins,
                solver::load,
                () -> RandomHex.of(random),
                invitation::address,
                new UnitsAtHand(record, () -> live.moment().n())::get);
        try {
            this.server = Server.start(
                    new Server.Settings(
                            "0.0.0.0",
                            settings.port(),
                            addresses::names,
                            () -> RandomHex.of(random).substring(0, 8),
                            settings.pace(),
                            new RequestRate(System::nanoTime)),
                    new DeviceCallers(sessions, network, lent, codes),
                    page,
                    routes -> {
                        rooms.open(routes);
                        LiveRoutes.register(
                                routes, live, writer, clock, new TapRules(Catalogue.TAPS, this::deviceOfId));
                        new LaptopPages(page, pin::makeAnother, this::stopSoon).register(routes);
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
        this.newPin = pin.makeFirst(); // after the port is known to be free: it is told once
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

    private Optional<Caller> deviceOfId(String id) {
        return record.read((Tx tx) -> DeviceStore.everOfId(tx, id)).map(DeviceCallers::caller);
    }

    private List<JoinView.Person> crew() {
        return record.people().names().entrySet().stream()
                .map(e -> new JoinView.Person(e.getKey(), e.getValue()))
                .sorted(Comparator.comparing(JoinView.Person::name))
                .toList();
    }

    public int port() {
        return server.port();
    }

    /** How tablets come in. */
    public Invitation invitation() {
        return invitation;
    }

    public String joinLink() {
        return invitation.joinLink();
    }

    /** The coach's PIN when this start has made it, else empty. */
    public String newPin() {
        return newPin;
    }

    /** Forgets the PIN that this start has made and nobody was told: the next start makes another, and tells it. */
    public void takeBackPin() throws IOException {
        if (!newPin.isEmpty()) {
            pin.forget();
        }
    }

    /** What stops the program when the coach says so on a page; nothing where nobody set it. */
    public void onStop(Runnable deed) {
        stopper = deed;
    }

    private void stopSoon() {
        var unused = clockWatch.schedule(() -> new Thread(stopper, "stop").start(), STOP_MS, TimeUnit.MILLISECONDS);
    }

    /** Another PIN for the coach in place of the one that was lost: told once, as at the first start. */
    public String renewPin() throws IOException {
        return pin.makeAnother();
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
        try {
            backups.now();
        } finally {
            record.close();
            log.close();
        }
    }
}
