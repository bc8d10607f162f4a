package org.skeinday.platform.record;

import java.io.IOException;
import java.sql.Savepoint;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.DatabaseTrouble;
import org.skeinday.platform.db.Ledger;
import org.skeinday.platform.db.WritingTx;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One batch of acts through database and journal: decide and apply all, append, force, commit. */
final class Batch {
    private static final Logger LOG = LoggerFactory.getLogger(Batch.class);

    private final ActStore record;
    private final Deciding deciding;
    private final Progress progress;

    /** What became of a batch. */
    record Outcome(Map<Writer.Pending, Answer> answers, Set<String> topics, long n) {}

    /** Nothing was appended, or it was taken back: nothing has happened. */
    static final class NotAppended extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NotAppended(IOException cause) {
            super(cause.getMessage(), cause);
        }
    }

    /** It is not known what the disk holds, or the database lags behind it: open again as at the start. */
    static final class MustReopen extends RuntimeException {
        private static final long serialVersionUID = 1L;

        MustReopen(Exception cause) {
            super(cause.getMessage(), cause);
        }
    }

    Batch(ActStore record, Deciding deciding, Progress progress) {
        this.record = record;
        this.deciding = deciding;
        this.progress = progress;
    }

    Outcome write(List<Writer.Pending> batch) {
        try {
            return written(batch);
        } finally {
            progress.idle();
        }
    }

    private Outcome written(List<Writer.Pending> batch) {
        WritingTx writing = record.database().writing();
        var step = new Step(record.journal().n(), record.journal().head());
        for (Writer.Pending pending : batch) {
            step.answers.put(pending, one(writing, pending.act(), step));
        }
        if (step.lines.isEmpty()) {
            writing.rollback();
        } else {
            Ledger.standAt(writing.tx(), step.n, step.head);
            progress.saving();
            keepNames(writing, step);
            boolean first = record.journal().n() == 0;
            append(writing, step);
            if (first) {
                mark();
            }
            commit(writing);
            erase(step);
        }
        return new Outcome(step.answers, step.topics, step.n);
    }

    /** What a batch has made so far. */
    private static final class Step {
        private final Map<Writer.Pending, Answer> answers = new LinkedHashMap<>();
        private final List<JournalLine> lines = new ArrayList<>();
        private final Map<String, String> names = new LinkedHashMap<>();
        private final Set<String> topics = new HashSet<>();
        private final Set<String> erased = new HashSet<>();
        private long n;
        private String head;

        Step(long n, String head) {
            this.n = n;
            this.head = head;
        }

        void take(JournalLine line, Decision.Decided decided) {
            n = line.n();
            head = line.hash();
            lines.add(line);
            names.putAll(decided.names());
            erased.addAll(Erasing.of(decided.facts()));
            topics.addAll(decided.topics());
        }
    }

    private Answer one(WritingTx writing, Act act, Step step) {
        String sum = Deciding.sum(act);
        var known = Ledger.known(writing.tx(), act.id());
        if (known.isPresent()) {
            return known.get().sum().equals(sum)
                    ? new Answer.Saved(known.get().n(), act.id())
                    : new Answer.Conflict("This entry's number was used before for something else; enter it anew");
        }
        Savepoint savepoint = writing.savepoint();
        @Nullable Answer refusal = decideAndApply(writing, act, sum, step);
        if (refusal != null) {
            writing.backTo(savepoint);
            return refusal;
        }
        return new Answer.Saved(step.n, act.id());
    }

    private @Nullable Answer decideAndApply(WritingTx writing, Act act, String sum, Step step) {
        try {
            progress.looking();
            long now = deciding.nowMs();
            Decision decision = deciding.decide(writing.tx(), act, now);
            if (decision instanceof Decision.Refused refused) {
                return new Answer.Refused(refused.reason(), refused.fields());
            }
            if (decision instanceof Decision.Unknown unknown) {
                return new Answer.Unknown(unknown.reason());
            }
            if (decision instanceof Decision.Outdated outdated) {
                return new Answer.Conflict(outdated.whatChanged());
            }
            var decided = (Decision.Decided) decision;
            var line = JournalLine.made(step.n + 1, now, act, sum, decided.facts(), step.head);
            int all = decided.facts().size();
            record.projection().apply(writing.tx(), line, done -> progress.writing(done, all));
            step.take(line, decided);
            return null;
        } catch (DatabaseTrouble e) {
            throw e;
        } catch (RuntimeException e) {
            LOG.error("Act {} of kind {} could not be applied", act.id(), act.kind(), e);
            return new Answer.Refused(
                    "This could not be recorded, through a fault of the program; nothing was changed", Map.of());
        }
    }

    /** Before the lines: a name without its person does no harm, a person without a name would. */
    private void keepNames(WritingTx writing, Step step) {
        try {
            record.people().add(Erasing.kept(writing.tx(), step.names));
        } catch (IOException e) {
            writing.rollback();
            throw new NotAppended(e);
        }
    }

    private void append(WritingTx writing, Step step) {
        try {
            record.journal().append(step.lines);
        } catch (IOException e) {
            takeBack();
            writing.rollback();
            throw new NotAppended(e);
        }
        try {
            record.journal().force(step.lines);
        } catch (IOException e) {
            throw new MustReopen(e); // after a failed force nobody knows what the disk holds
        }
    }

    /** Before the first line is called saved: an empty journal is none of this folder from here on. */
    private void mark() {
        try {
            record.mark();
        } catch (IOException e) {
            throw new MustReopen(e);
        }
    }

    private void takeBack() {
        try {
            record.journal().takeBack();
        } catch (IOException e) {
            throw new MustReopen(e);
        }
    }

    /** After the lines, which say so: opening the record erases again what could not be erased here. */
    private void erase(Step step) {
        try {
            record.people().erase(step.erased);
        } catch (IOException e) {
            throw new MustReopen(e);
        }
    }

    private static void commit(WritingTx writing) {
        try {
            writing.commit();
        } catch (DatabaseTrouble e) {
            throw new MustReopen(e);
        }
    }
}
