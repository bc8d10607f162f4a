package org.skeinday.cli;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.skeinday.exchange.Nearest;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What is wrong with a command line, in one plain line. */
final class Complaint {
    private Complaint() {}

    /** @param typed the whole command line */
    static String of(ParameterException e, List<String> typed) {
        return e instanceof UnmatchedArgumentException unmatched ? unknown(unmatched) : plain(e, typed);
    }

    private static String unknown(UnmatchedArgumentException e) {
        CommandLine command = e.getCommandLine();
        String typed = e.getUnmatched().get(0);
        boolean root = command.getParent() == null;
        if (e.isUnknownOption()) {
            String option = typed.split("=", 2)[0];
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

    /** The option first, then what is wrong with what was typed for it. */
    private static String plain(ParameterException e, List<String> typed) {
        if (e instanceof MissingParameterException missing) {
            Optional<String> bare = missing.getMissing().stream()
                    .flatMap(option -> option instanceof OptionSpec o ? Stream.of(o.names()) : Stream.empty())
                    .filter(typed::contains)
                    .findFirst();
            if (bare.isPresent()) {
                return bare.get() + " needs a value; see --help";
            }
        }
        if (e.getArgSpec() instanceof OptionSpec option && e.getCause() != null) {
            return option.longestName() + ": "
                    + (e.getCause() instanceof Unreadable said
                            ? said.getMessage()
                            : "'" + e.getValue() + "' cannot be read");
        }
        return String.valueOf(e.getMessage()).replace('\n', ' ');
    }
}
