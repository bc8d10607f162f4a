package org.skeinday.house;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.CompositeArchRule;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Who may use what. The order of the rooms is written here and nowhere else. */
final class HouseRules {
    static final String ROOT = "org.skeinday";

    /** Each room may use those before it. */
    static final List<String> ROOMS = List.of(
            "units",
            "evidence",
            "motor",
            "winding",
            "flight",
            "hall",
            "timing",
            "contest",
            "steps",
            "standing",
            "device",
            "attempt",
            "bench",
            "dayplan",
            "review",
            "exchange",
            "prepare",
            "paper",
            "audit");

    /** A ring appears only when needed: those that are there today. */
    static final List<String> RINGS = List.of(
            "evidence.store",
            "motor.store",
            "winding.store",
            "hall.store",
            "hall.action",
            "hall.web",
            "contest.store",
            "steps.store",
            "steps.action",
            "steps.web",
            "device.store",
            "device.action",
            "device.web",
            "attempt.store",
            "attempt.action",
            "attempt.web",
            "bench.action",
            "bench.web",
            "dayplan.store",
            "dayplan.action",
            "dayplan.web",
            "review.store",
            "review.action",
            "review.web",
            "exchange.action",
            "prepare.action",
            "prepare.web",
            "paper.action",
            "paper.web",
            "audit.store",
            "audit.web");

    static final List<String> PLATFORM =
            List.of("platform.record", "platform.db", "platform.folder", "platform.http", "platform.live");

    /** What a pure room may use of the JDK; {@code org.jspecify} is marks for the compiler, no code. */
    private static final List<String> JDK =
            List.of("java.lang..", "java.util..", "java.time..", "java.math..", "org.jspecify.annotations");

    /** What a room is there for, beyond that: mathematics, the solver, the hash of a token, characters of a file. */
    private static final Map<String, List<String>> OWN = Map.of(
            "motor", List.of("org.hipparchus.."),
            "flight", List.of("org.hipparchus.."),
            "hall", List.of("org.locationtech.jts.."),
            "device", List.of("java.security", "java.nio.charset"),
            "dayplan", List.of("com.google.ortools.."),
            "review", List.of("org.hipparchus..", "java.text"), // java.text: letters without their accents
            "exchange", List.of("java.nio", "java.nio.charset"));

    /** The one class that speaks to the solver. */
    private static final String SOLVER = ROOT + ".dayplan.CpSat";

    /** Main starts, App wires; what it is made of, its pages and their help are the rest of the wiring. */
    private static final Set<String> OF_THE_ROOT = new TreeSet<>(Set.of("Main", "App", "Catalogue", "Pages"));

    private HouseRules() {}

    static String room(String name) {
        return ROOT + "." + name;
    }

    /** 1: pure rooms know the JDK, the rooms before them, and the mathematics they are there for. */
    static ArchRule pure() {
        List<ArchRule> rules = new ArrayList<>();
        for (int i = 0; i < ROOMS.size(); i++) {
            rules.add(pure(i));
        }
        rules.add(noClasses()
                .that(resideInAPackage(room("exchange")).and(not("CsvLines")))
                .should()
                .dependOnClassesThat()
                .resideInAPackage("de.siegmar.fastcsv..")
                .because("CsvLines alone splits text into cells"));
        rules.add(noClasses()
                .that(resideInAPackage(room("exchange")).and(not("XlsxBook")))
                .should()
                .dependOnClassesThat(
                        resideInAnyPackage("org.dhatim.fastexcel..", "org.apache.commons.compress..", "java.io")
                                .and(not(IOException.class.getSimpleName())))
                .because("XlsxBook alone knows workbooks and their bytes"));
        rules.add(noClasses()
                .that(resideInAPackage(room("exchange")).and(not("Bundle")))
                .should()
                .dependOnClassesThat()
                .resideInAPackage("com.fasterxml.jackson..")
                .because("Bundle alone speaks JSON"));
        return all(rules);
    }

    private static ArchRule pure(int i) {
        String name = ROOMS.get(i);
        List<String> allowed = new ArrayList<>(JDK);
        ROOMS.subList(0, i + 1).forEach(earlier -> allowed.add(room(earlier)));
        allowed.addAll(OWN.getOrDefault(name, List.of()));
        if (name.equals("exchange")) {
            allowed.addAll(List.of(
                    "de.siegmar.fastcsv..",
                    "org.dhatim.fastexcel..",
                    "org.apache.commons.compress..",
                    "com.fasterxml.jackson..",
                    "java.io"));
        }
        return classes()
                .that()
                .resideInAPackage(room(name))
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage(allowed.toArray(String[]::new))
                        .or(type(IOException.class))) // thrown by readers of text, too
                .as("The pure room " + name + " knows only " + allowed);
    }

    private static DescribedPredicate<JavaClass> not(String simpleName) {
        return describe("not " + simpleName, c -> !c.getSimpleName().equals(simpleName));
    }

    /** 2: who may use a ring. Commands run the whole program; Main alone knows them. A layer without classes fails. */
    static ArchRule rings() {
        return all(List.of(
                layers(),
                noClasses()
                        .that(resideInAPackage(ROOT).and(not("Main")))
                        .should()
                        .dependOnClassesThat()
                        .resideInAPackage(room("cli"))));
    }

    private static ArchRule layers() {
        return layeredArchitecture()
                .consideringOnlyDependenciesInLayers()
                .withOptionalLayers(false)
                .layer("root")
                .definedBy(ROOT)
                .layer("cli")
                .definedBy(room("cli"))
                .layer("web")
                .definedBy(room("*.web"))
                .layer("action")
                .definedBy(room("*.action"))
                .layer("store")
                .definedBy(room("*.store"))
                .layer("pure")
                .definedBy(ROOMS.stream().map(HouseRules::room).toArray(String[]::new))
                .layer("platform")
                .definedBy(room("platform.."))
                .whereLayer("web")
                .mayOnlyBeAccessedByLayers("root")
                .whereLayer("action")
                .mayOnlyBeAccessedByLayers("web", "cli", "root")
                .whereLayer("store")
                .mayOnlyBeAccessedByLayers("action", "web", "cli", "root")
                .whereLayer("cli")
                .mayOnlyBeAccessedByLayers("root")
                .whereLayer("root")
                .mayOnlyBeAccessedByLayers("cli")
                .ignoreDependency(resideInAPackage(room("cli")), resideInAPackage(room("device.web"))); // the address
    }

    /** 3: Javalin only where pages are, jOOQ and the database only where tables are, geometry in the hall, the solver in one class. */
    static ArchRule libraries() {
        return all(List.of(
                only("io.javalin..", room("*.web"), room("platform.http"), room("platform.live")),
                only("org.jooq..", room("*.store"), room("platform.db..")),
                only("org.h2..", room("platform.db")),
                only("org.locationtech.jts..", room("hall")),
                noClasses()
                        .that(describe("are not the day plan's solver class", c -> !isSolver(c)))
                        .should()
                        .dependOnClassesThat()
                        .resideInAPackage("com.google.ortools..")
                        .as("com.google.ortools.. is used only in " + SOLVER)));
    }

    private static boolean isSolver(JavaClass c) {
        return c.getName().equals(SOLVER) || c.getName().startsWith(SOLVER + "$");
    }

    private static ArchRule only(String library, String... homes) {
        return noClasses()
                .that()
                .resideOutsideOfPackages(homes)
                .should()
                .dependOnClassesThat()
                .resideInAPackage(library)
                .as(library + " is used only in " + List.of(homes));
    }

    /** 4: rooms stand in a row, whatever the ring; the platform knows none of them. */
    static ArchRule order() {
        List<ArchRule> rules = new ArrayList<>();
        for (int i = 0; i < ROOMS.size() - 1; i++) {
            rules.add(noClasses()
                    .that()
                    .resideInAPackage(room(ROOMS.get(i)) + "..")
                    .should()
                    .dependOnClassesThat(resideInAnyPackage(within(ROOMS.subList(i + 1, ROOMS.size()))))
                    .as("The room " + ROOMS.get(i) + " uses no later room"));
        }
        rules.add(noClasses()
                .that()
                .resideInAPackage(room("platform.."))
                .should()
                .dependOnClassesThat(resideInAnyPackage(within(ROOMS)))
                .as("The platform knows no room"));
        rules.add(slices().matching(room("(*)..")).should().beFreeOfCycles());
        return all(rules);
    }

    private static String[] within(List<String> rooms) {
        return rooms.stream().map(name -> room(name) + "..").toArray(String[]::new);
    }

    /** 5: what starts and wires the program is at home in the root package, and nothing else. */
    static ArchRule root() {
        return noClasses()
                .that(describe("are not " + OF_THE_ROOT, c -> !OF_THE_ROOT.contains(outermost(c))))
                .should()
                .resideInAPackage(ROOT)
                .as("The root package holds " + OF_THE_ROOT + "; every other class has a room");
    }

    /** The class of a file, its place below the root before it. */
    static String outermost(JavaClass c) {
        return c.getName().replaceFirst("\\$.*", "").replace(ROOT + ".", "");
    }

    private static ArchRule all(List<ArchRule> rules) {
        CompositeArchRule all = CompositeArchRule.of(rules.get(0));
        for (ArchRule rule : rules.subList(1, rules.size())) {
            all = all.and(rule);
        }
        return all;
    }
}
