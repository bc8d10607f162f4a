package org.skeinday.motor;

import java.util.Map;

/**
 * How long a motor still needs on the bench until it is ready to be wound: the deeds and the waits that its usual order has
 * ahead, one after the other.
 *
 * @param leastS with the least waits, in seconds
 * @param wishedS with the wished ones, in seconds
 */
public record BenchWork(int leastS, int wishedS) {
    /** What a deed itself takes: weighing, lubricating, stretching, running back, washing (common practice). */
    private static final int DEED_S = 60;

    private static final BenchWork NOTHING = new BenchWork(0, 0);

    /** Whether and how it can still be done. */
    public enum Verdict {
        DONE("ready"),
        FITS("fits"),
        ONLY_SHORTENED("fits only with the least waits"),
        TOO_LATE("does not fit any more");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * @param waits by name, each as it is set
     * @param atMs now, ms since 1970 UTC
     */
    public static BenchWork of(MotorLife life, Map<Wait.Name, Wait> waits, long atMs) {
        BenchWork rested = deed().and(wait(waits, Wait.Name.REST));
        BenchWork held = deed().and(wait(waits, Wait.Name.HOLD)).and(rested);
        BenchWork soaked = deed().and(wait(waits, Wait.Name.SOAK)).and(held);
        return switch (life.stage()) {
            case CUT, GRITTY -> deed().and(soaked);
            case WEIGHED, WASHED -> soaked;
            case LUBRICATED -> left(life, atMs).and(held);
            case CONDITIONED -> left(life, atMs).and(rested);
            case WOUND, ON_MODEL, FLOWN -> deed().and(rested);
            case RUN_BACK -> rested;
            case RESTING -> left(life, atMs);
            case READY, RETIRED, BROKEN, LOST -> NOTHING;
        };
    }

    /** Both ends belong to the better verdict. @param seconds until it must be ready */
    public Verdict within(long seconds) {
        if (wishedS == 0) {
            return Verdict.DONE;
        }
        return wishedS <= seconds ? Verdict.FITS : leastS <= seconds ? Verdict.ONLY_SHORTENED : Verdict.TOO_LATE;
    }

    private BenchWork and(BenchWork other) {
        return new BenchWork(leastS + other.leastS, wishedS + other.wishedS);
    }

    private static BenchWork deed() {
        return new BenchWork(DEED_S, DEED_S);
    }

    private static BenchWork wait(Map<Wait.Name, Wait> waits, Wait.Name name) {
        Wait wait = waits.getOrDefault(name, name.asUsual());
        return new BenchWork(wait.minimumS(), wait.preferredS());
    }

    /** Of the wait that runs. */
    private static BenchWork left(MotorLife life, long atMs) {
        Wait wait = life.waiting();
        if (wait == null) {
            return NOTHING;
        }
        long waited = Math.max(0, (atMs - life.sinceMs()) / 1000);
        return new BenchWork(
                (int) Math.max(0, wait.minimumS() - waited), (int) Math.max(0, wait.preferredS() - waited));
    }
}
