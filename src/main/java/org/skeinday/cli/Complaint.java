package org.skeinday.cli;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.skeinday.exchange.Nearest;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What is wrong with a command line, in one plain line. */
final class Complaint {
    private Complaint() {}

    static String of(ParameterException e) {
        return e instanceof UnmatchedArgumentException unmatched ? unknown(unmatched) : plain(e);
    }

    private static String unknown(UnmatchedArgumentException e) {
        CommandLine command = e.getCommandLine();
        String typed = e.getUnmatched().get(0);
        boolean root = command.getParent() == null;
        if (e.isUnknownOption()) {
            String option = typed.replaceFirst("=.*", "");
            return "There is no option " + option + (root ? "." : " of " + command.getCommandName() + ".")
                    + meant(option, command.getCommandSpec().optionsMap().keySet());
        }
        return root
                ? "There is no command " + typed + "."
                        + meant(typed, command.getSubcommands().keySet())
                : command.getCommandName() + " takes no more words, but was given " + typed + ".";
    }

    private static String meant(String typed, Collection<String> known) {
        Optional<String> near = Nearest.close(typed, List.copyOf(known));
        return near.map(word -> " Did you mean " + word + "?").orElse(" See --help.");
    }

    /** The option first, then what is wrong; a kind of number in words. */
    private static String plain(ParameterException e) {
        return String.valueOf(e.getMessage())
                .replace('\n', ' ')
                .replaceFirst("^Invalid value for option '([^']+)'[^:]*: ", "$1: ")
                .replaceFirst("^Missing required parameter for option '([^']+)'.*", "$1 needs a value; see --help")
                .replaceFirst("^(.+) is not an (int|long)$", "$1 is not a whole number")
                .replaceFirst("^(.+) is not a double$", "$1 is not a number");
    }
}
