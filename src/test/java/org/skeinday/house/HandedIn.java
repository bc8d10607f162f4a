package org.skeinday.house;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ThreadLocalRandom;

/** Time and chance come from who starts the program, so that every rule can be asked about any moment. */
final class HandedIn {
    private static final Set<String> TELLS_NOW = Set.of("now", "systemUTC", "systemDefaultZone", "systemDefault");

    /** And the mark that tells one folder from another: no rule decides by it and no replay meets it. */
    private static final Set<String> START_THE_PROGRAM = Set.of(
            "Main",
            "App",
            "cli.Commands",
            "cli.Computing",
            "cli.Serving",
            "cli.BackupCommands",
            "platform.record.FolderMark");

    private HandedIn() {}

    /** 6: time and chance are handed in. */
    static ArchRule rule() {
        return noClasses()
                .that(describe(
                        "are not the ones that start the program",
                        c -> !START_THE_PROGRAM.contains(HouseRules.outermost(c))))
                .should()
                .accessTargetWhere(describe("it takes time or chance from the air", HandedIn::fromTheAir))
                .as("A clock and an id source are handed in");
    }

    private static boolean fromTheAir(JavaAccess<?> access) {
        AccessTarget target = access.getTarget();
        String owner = target.getOwner().getName();
        boolean bare = target instanceof AccessTarget.CodeUnitAccessTarget unit
                && unit.getRawParameterTypes().isEmpty();
        boolean time = bare && owner.startsWith("java.time.") && TELLS_NOW.contains(target.getName());
        boolean system = owner.equals(System.class.getName())
                && Set.of("currentTimeMillis", "nanoTime").contains(target.getName());
        boolean random = is(target, UUID.class, "randomUUID")
                || is(target, Math.class, "random")
                || is(target, ThreadLocalRandom.class, "current")
                || bare && (is(target, Random.class, "<init>") || owner.equals("java.security.SecureRandom"));
        return time
                || system
                || random
                || is(target, Clock.class, "systemUTC")
                || is(target, ZoneId.class, "systemDefault");
    }

    private static boolean is(AccessTarget target, Class<?> owner, String name) {
        return target.getOwner().isEquivalentTo(owner) && target.getName().equals(name);
    }
}
