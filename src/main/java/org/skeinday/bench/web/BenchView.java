package org.skeinday.bench.web;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.FullHands;
import org.skeinday.motor.BreakCause;
import org.skeinday.motor.MotorDeed;
import org.skeinday.motor.MotorStage;
import org.skeinday.steps.Cautions;

/**
 * The Bench in finished words.
 *
 * @param none why there is no motor, empty when there are some
 * @param captain whether a captain looks, who may set how long is waited
 * @param hands of whoever looks: at a motor under way they have no key here until the release
 * @param jumps of the laptop's clock that somebody has to explain
 */
public record BenchView(String none, List<Row> rows, List<Jump> jumps, boolean captain, FullHands hands) {
    /** Ids of what bites here now, each once. */
    public List<String> cautions() {
        return rows.stream()
                .map(Row::caution)
                .filter(Objects::nonNull)
                .distinct()
                .sorted()
                .toList();
    }

    /**
     * One motor.
     *
     * @param seen the step that is shown, for the server to see whether it still stands
     * @param look how the state is drawn: empty (waiting), now, done or late
     * @param until epoch ms at which its wait is over, 0 when it waits for nothing
     * @param waits what runs, in words
     * @param over epoch ms from which it has waited too long, 0 when never
     * @param undo epoch ms until which the last step can be taken back with one tap, 0 when not
     */
    public record Row(
            String id,
            String tag,
            String state,
            String look,
            String size,
            String need,
            String seen,
            long until,
            String waits,
            long over,
            List<Deed> now,
            List<Deed> others,
            boolean handedIn,
            boolean mayHandIn,
            boolean byHand,
            long undo,
            String undoes) {
        /** Id of the caution that bites at what is to be done with it now; null where none does. */
        public @Nullable String caution() {
            if (now.stream().anyMatch(deed -> deed.deed().equals(MotorDeed.LUBRICATE.word()))) {
                return Cautions.DRIPPED;
            }
            return state.equals(MotorStage.FLOWN.word()) ? Cautions.LANDED : null;
        }
    }

    /** @param ask what is typed in with it: reason, break or nothing @param unit of a torque without one, as files write it */
    public record Deed(String deed, String words, String ask, String unit) {
        /** As labels have it. */
        public String shownUnit() {
            return unit.replace('-', '·');
        }
    }

    public record Jump(String id, String words) {}

    /** One motor's page. @param batch its batch's id @param broke how it broke; null while it is whole @param did what the last word did to figures of its batch, in words @param problem what no form here shows */
    public record Motor(
            Row row,
            String batch,
            List<Line> facts,
            List<Line> steps,
            boolean mayAct,
            FullHands hands,
            @Nullable Broke broke,
            String did,
            String problem) {}

    /**
     * What is known of a break.
     *
     * @param about what it counts as, in a sentence
     * @param cause word of the one that holds; empty while nobody has said
     * @param seen what the form showed, for the server to see whether it still stands
     * @param asked what is asked about its numbers, empty for nothing
     * @param typed whether those were typed, and not counted in a wind that was read
     * @param mayJudge whether the coach looks
     * @param step id of the break, for who finds that there was none
     * @param mistake what is wrong with what they said
     */
    public record Broke(
            String about,
            String cause,
            String seen,
            String asked,
            boolean typed,
            boolean mayJudge,
            String wrong,
            String step,
            String mistake) {
        public List<BreakCause> causes() {
            return List.of(BreakCause.values());
        }
    }

    public record Line(String label, String value) {}

    /** How long is waited. */
    public record Waits(List<WaitRow> rows, String saved) {}

    public record WaitRow(
            String name, String title, String least, String wished, String longest, boolean required, String wrong) {}

    /** The wall page: what runs, large. */
    public record Wall(List<Row> rows) {}
}
