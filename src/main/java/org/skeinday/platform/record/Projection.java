package org.skeinday.platform.record;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.stream.Collectors;
import org.skeinday.platform.db.Ledger;
import org.skeinday.platform.db.Tx;

/** Puts journal lines into tables: the one way, living and replaying. */
public final class Projection {
    private static final int TELL_EACH = 256;

    private final Map<String, FactKind> kinds;
    private final BiConsumer<Tx, FactWritten> beside;

    public Projection(List<FactKind> kinds) {
        this(kinds, (tx, fact) -> {});
    }

    /** @param beside notes of every fact, whatever its kind, what is to be told of it; before it is applied */
    public Projection(List<FactKind> kinds, BiConsumer<Tx, FactWritten> beside) {
        this.beside = beside;
        this.kinds = kinds.stream().collect(Collectors.toUnmodifiableMap(FactKind::kind, Function.identity()));
    }

    /** Of every fact that it can put into tables. */
    public Set<String> kinds() {
        return kinds.keySet();
    }

    /** A newer program wrote this: nothing is wrong with it, but this program cannot go on with it. */
    static final class Newer extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Newer(long n, String why) {
            super("record " + n + ": it was written by a newer Skeinday (" + why + "). Use that version, or restore"
                    + " a backup made before.");
        }
    }

    /** Whoever commits says with {@link Ledger#standAt} how far it has come. */
    void apply(Tx tx, JournalLine line) {
        apply(tx, line, done -> {});
    }

    /** @param applied hears after every few hundred facts how many are applied */
    void apply(Tx tx, JournalLine line, IntConsumer applied) {
        int done = 0;
        for (JournalLine.FactLine fact : line.facts()) {
            FactKind kind = kinds.get(fact.kind());
            if (kind == null || fact.v() > kind.newest()) {
                throw new Newer(line.n(), "its fact " + fact.kind() + " in form " + fact.v() + " is not known here");
            }
            beside.accept(tx, written(line, done, fact));
            kind.apply().apply(tx, fact.v(), fact.body());
            if (++done % TELL_EACH == 0) {
                applied.accept(done);
            }
        }
        Ledger.note(tx, line.act(), line.sum(), line.n());
    }

    private static FactWritten written(JournalLine line, int place, JournalLine.FactLine fact) {
        Act.Brought brought = line.brought();
        return new FactWritten(
                line.n(),
                place,
                line.atMs(),
                line.dev(),
                line.who(),
                brought == null ? null : brought.device(),
                fact.kind(),
                fact.body());
    }
}
