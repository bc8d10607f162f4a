package org.skeinday.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Each rule holds in the house, and is seen to fail on classes that break it on purpose. */
class HouseRulesTest {
    private static final Path MAIN = Path.of("target/classes");

    private static final Map<String, ArchRule> RULES = Map.of(
            "pure", HouseRules.pure(),
            "rings", HouseRules.rings(),
            "libraries", HouseRules.libraries(),
            "order", HouseRules.order(),
            "root", HouseRules.root(),
            "handedIn", HandedIn.rule());

    /** Rule, ring, name, what it does there. */
    private record Seed(String rule, String ring, String name, String body) {}

    private static final List<Seed> SEEDS = List.of(
            new Seed("pure", "motor", "ReadsFiles", "java.nio.file.Path p;"),
            new Seed("pure", "units", "KnowsALaterRoom", "org.skeinday.timing.Take t;"),
            new Seed("pure", "winding", "DoesStatistics", "org.hipparchus.stat.regression.SimpleRegression r;"),
            new Seed("pure", "contest", "MeasuresShapes", "org.locationtech.jts.geom.Point p;"),
            new Seed("pure", "hall", "KnowsChecklists", "org.skeinday.steps.Checklist c;"),
            new Seed("pure", "steps", "DrawsThePlace", "org.locationtech.jts.geom.Polygon p;"),
            new Seed("pure", "attempt", "KnowsTheRecord", "org.skeinday.platform.record.Act a;"),
            new Seed("pure", "standing", "KnowsTheWeb", "io.javalin.http.Context c;"),
            new Seed("pure", "exchange", "SplitsLines", "de.siegmar.fastcsv.reader.CsvRecord c;"),
            new Seed("pure", "exchange", "OpensAWorkbook", "org.dhatim.fastexcel.Workbook w;"),
            new Seed("pure", "exchange", "OpensAFile", "java.io.FileInputStream f;"),
            new Seed("pure", "review", "ReadsText", "java.io.Reader r;"),
            new Seed("pure", "dayplan", "CountsInADatabase", "org.jooq.DSLContext d;"),
            new Seed("rings", "attempt.action", "RendersAPage", "org.skeinday.attempt.web.NowPages p;"),
            new Seed("rings", "exchange.web", "BorrowsAPage", "org.skeinday.RootOfAll p;"),
            new Seed("rings", "contest.store", "DoesADeed", "org.skeinday.attempt.action.AttemptActions d;"),
            new Seed("rings", "contest", "ReadsTables", "org.skeinday.contest.store.EventStore s;"),
            new Seed("rings", "platform.record", "CallsACommand", "org.skeinday.cli.Skeinday s;"),
            new Seed("rings", "cli", "ShowsAPage", "org.skeinday.attempt.web.NowPages p;"),
            new Seed("rings", "", "StartsACommand", "org.skeinday.cli.Commands c;"),
            new Seed("libraries", "attempt.action", "AnswersHttp", "io.javalin.http.Context c;"),
            new Seed("libraries", "cli", "ServesHttp", "io.javalin.Javalin j;"),
            new Seed("libraries", "attempt.web", "AsksTheDatabase", "org.jooq.DSLContext d;"),
            new Seed("libraries", "motor.store", "OpensADatabase", "org.h2.jdbcx.JdbcDataSource d;"),
            new Seed("libraries", "dayplan", "SolvesBesideTheSolver", "com.google.ortools.sat.CpModel m;"),
            new Seed("libraries", "paper.web", "CutsPolygons", "org.locationtech.jts.geom.Polygon p;"),
            new Seed("libraries", "cli", "SolvesInACommand", "com.google.ortools.sat.CpSolver s;"),
            new Seed("order", "contest.store", "ReadsALaterStore", "org.skeinday.attempt.store.AttemptStore s;"),
            new Seed("order", "review", "ReadsALaterRoom", "org.skeinday.exchange.Day d;"),
            new Seed("order", "platform.http", "KnowsARoom", "org.skeinday.units.Length l;"),
            new Seed("order", "attempt.web", "TurnsInACircle", "org.skeinday.exchange.Day d;"),
            new Seed("root", "", "HasNoRoom", "static class Inner {}"),
            new Seed("root", "", "SpeaksToTheNetwork", "java.net.InetAddress a;"),
            new Seed("handedIn", "attempt.action", "AsksTheWall", "Object o = java.time.Instant.now();"),
            new Seed(
                    "handedIn",
                    "timing",
                    "AsksByReference",
                    "java.util.function.Supplier<?> s = java.time.Instant::now;"),
            new Seed("handedIn", "", "AsksTheZone", "Object o = java.time.ZoneId.systemDefault();"),
            new Seed("handedIn", "device", "MakesItsClock", "Object o = java.time.Clock.systemUTC();"),
            new Seed("handedIn", "device.web", "CountsMillis", "long l = System.currentTimeMillis();"),
            new Seed("handedIn", "platform.live", "CountsNanos", "long l = System.nanoTime();"),
            new Seed("handedIn", "motor", "ThrowsDice", "double d = Math.random();"),
            new Seed("handedIn", "exchange.action", "MakesIds", "Object o = java.util.UUID.randomUUID();"),
            new Seed("handedIn", "contest.store", "MakesChance", "Object o = new java.util.Random();"),
            new Seed("handedIn", "platform.http", "MakesSecrets", "Object o = new java.security.SecureRandom();"));

    /** Needed by a seed, harmless itself. */
    private static final Seed ROOT_CLASS = new Seed("", "", "RootOfAll", "");

    private static JavaClasses house;
    private static JavaClasses seeded;

    @TempDir
    static Path temp;

    @BeforeAll
    static void readTheHouse() throws IOException {
        SeededHouse seeds = new SeededHouse(temp);
        seeds.add(ROOT_CLASS.ring, ROOT_CLASS.name, ROOT_CLASS.body);
        for (Seed seed : SEEDS) {
            seeds.add(seed.ring, seed.name, seed.body);
        }
        Path compiled = seeds.compile();
        house = read(MAIN);
        seeded = read(MAIN, compiled);
    }

    /** Reads what is written by hand: what jOOQ and jte generate is larger than all of it, and no rule is about its inside. */
    private static JavaClasses read(Path... homes) {
        return new ClassFileImporter(List.of(HouseRulesTest::isWrittenByHand)).importPaths(homes);
    }

    private static boolean isWrittenByHand(Location classFile) {
        return !classFile.contains(inPath("jte")) && !classFile.contains(inPath("platform.db.schema"));
    }

    private static String inPath(String room) {
        return "/" + HouseRules.room(room).replace('.', '/') + "/";
    }

    @TestFactory
    Stream<DynamicTest> the_house_keeps_each_rule() {
        return new TreeSet<>(RULES.keySet())
                .stream().map(name -> dynamicTest(name, () -> RULES.get(name).check(house)));
    }

    @TestFactory
    Stream<DynamicTest> each_rule_is_seen_to_fail_on_its_seeds() {
        return new TreeSet<>(RULES.keySet()).stream().map(name -> dynamicTest(name, () -> assertAllFound(name)));
    }

    private static void assertAllFound(String rule) {
        String found = String.join(
                "\n", RULES.get(rule).evaluate(seeded).getFailureReport().getDetails());
        List<String> missed = new ArrayList<>();
        for (Seed seed : SEEDS) {
            if (seed.rule.equals(rule) && !found.contains("." + seed.name)) {
                missed.add(seed.name);
            }
        }
        assertEquals(List.of(), missed, "not seen by the rule, which saw:\n" + found);
    }

    @TestFactory
    Stream<DynamicTest> each_room_that_a_rule_names_has_classes() {
        return Stream.of(HouseRules.ROOMS, HouseRules.RINGS, HouseRules.PLATFORM, List.of("cli"))
                .flatMap(List::stream)
                .map(name -> dynamicTest(name, () -> assertTrue(hasClasses(HouseRules.room(name)), name)));
    }

    private static boolean hasClasses(String home) {
        return house.stream()
                .anyMatch(c ->
                        c.getPackageName().equals(home) && !c.getSimpleName().equals("package-info"));
    }

    @Test
    void each_room_of_the_house_is_named_in_the_rules() {
        var named = new TreeSet<String>(List.of(HouseRules.ROOT, HouseRules.room("cli")));
        Stream.of(HouseRules.ROOMS, HouseRules.RINGS, HouseRules.PLATFORM)
                .flatMap(List::stream)
                .forEach(name -> named.add(HouseRules.room(name)));
        var there = new TreeSet<String>();
        house.forEach(c -> there.add(c.getPackageName()));
        assertEquals(named, there);
    }

    @Test
    void text_of_sql_stands_only_in_stores_and_the_database_room() throws IOException {
        assertEquals(List.of(), SqlText.outsideItsHomes(Path.of("src/main/java")));
    }

    @Test
    void text_of_sql_elsewhere_is_seen() throws IOException {
        SeededHouse other = new SeededHouse(temp.resolve("sql"));
        other.add("attempt.action", "WritesSql", "String s = \"select n from attempt\";");
        other.add("attempt.store", "MayWriteSql", "String s = \"select n from attempt\";");
        other.add("attempt.web", "SpeaksOfUpdates", "String s = \"Update the set of motors\";");
        assertEquals(List.of("WritesSql.java"), SqlText.outsideItsHomes(other.sources()));
    }

    @Test
    void a_type_has_a_name_of_its_own() throws IOException {
        Path main = Path.of("src/main/java");
        assertEquals(List.of(), HouseNames.twins(main, Path.of("src/test/java")));
        assertEquals(List.of(), HouseNames.shadows(main));
        assertEquals(List.of(), HouseNames.likeALibrary(main));
    }

    @Test
    void a_name_that_means_two_things_is_seen() throws IOException {
        SeededHouse other = new SeededHouse(temp.resolve("names"));
        other.add("attempt", "Doubt", "");
        other.add("winding", "Doubt", "");
        other.add("platform.record", "Record", "");
        other.add("timing", "Clock", "");
        other.add("timing", "Phase", "record Void(long sinceMs) {}");
        other.add("timing", "AsksTheClock", "java.time.Clock clock;");
        Path sources = other.sources();
        Path asks = sources.resolve("org/skeinday/timing/AsksTheClock.java");
        Files.writeString(asks, Files.readString(asks).replace(";\npublic", ";\nimport java.time.Clock;\npublic"));
        assertEquals(
                List.of("Doubt in org/skeinday/attempt and org/skeinday/winding"),
                HouseNames.twins(sources).stream()
                        .map(words -> words.replace('\\', '/'))
                        .toList());
        SeededHouse tests = new SeededHouse(temp.resolve("tests"));
        tests.add("fault", "AsksTheClock", "");
        assertTrue(HouseNames.twins(sources, tests.sources()).stream().anyMatch(w -> w.startsWith("AsksTheClock in ")));
        assertEquals(List.of("Record in Record", "Void in Phase"), HouseNames.shadows(sources));
        assertEquals(List.of("AsksTheClock imports java.time.Clock"), HouseNames.likeALibrary(sources));
    }
}
