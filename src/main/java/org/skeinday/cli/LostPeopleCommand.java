package org.skeinday.cli;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import org.jspecify.annotations.Nullable;
import org.skeinday.Catalogue;
import org.skeinday.platform.record.LostPeople;
import org.skeinday.platform.record.RandomHex;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** The way out when names are lost that no backup has: the coach says so, and says how many they are. */
@Command(
        name = "lost-people",
        description = "Where names in people.json are lost: brings back those that a backup has, and records the others"
                + " as erased, so that the day goes on without them.",
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Examples:",
            "  lost-people --data my-season              (says whose names are lost, and how many)",
            "  lost-people --erase 2 --data my-season    (for good: two people are 'someone' from then on)"
        })
final class LostPeopleCommand extends Commands.OnFolder {
    @Option(
            names = "--erase",
            paramLabel = "HOW-MANY",
            description = "so many people whose names nobody has are recorded as erased; it must be their number")
    @Nullable
    Integer erase;

    private final Clock clock;
    private final SecureRandom random;

    LostPeopleCommand(Clock clock, SecureRandom random) {
        this.clock = clock;
        this.random = random;
    }

    @Override
    public Integer call() throws Exception {
        Path folder = existing(folder("skeinday"));
        var people = new LostPeople(folder);
        LostPeople.Found lost = people.look();
        int gone = lost.gone().size();
        if (erase != null && erase != gone) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--erase must be the number of people whose names nobody has, " + gone + ", but was " + erase);
        }
        if (lost.isWhole()) {
            out().println("No name is lost.");
            return 0;
        }
        if (gone > 0 && erase == null) {
            out().println(gone + " of the record's people have no name in " + folder + ", nor in its backups: "
                    + String.join(", ", lost.gone()) + ".");
            out().println("Their flights and times stay. To go on without their names, for good: lost-people --erase "
                    + gone + " --data " + folder);
            return ExitCode.DAMAGED;
        }
        long records = people.mend(lost, Catalogue.projection(), clock, RandomHex.of(random));
        out().println(lost.found().size() + " names came back from backups, " + gone
                + " people were recorded as erased; " + records + " records.");
        if (lost.unreadable()) {
            out().println("The coach's PIN was lost, too: the next start makes another. The old file is set aside.");
        }
        return 0;
    }
}
