package org.skeinday.winding;

import java.util.List;
import java.util.Optional;

/** From when on live rings are held, by what was tapped of a wind. */
final class WindHold {
    private WindHold() {}

    /** As {@link Wind#heldSince}. */
    static Optional<Long> since(List<WindPhase> phases) {
        WindTimes times = WindTimes.said(phases);
        Long last = times.stopped() == null ? times.backedOff() : times.stopped();
        String as = times.stopped() == null ? WindPhase.BACKED_OFF : WindPhase.STOPPED;
        return phases.stream()
                .filter(tap -> tap.phase().equals(as) && last != null && tap.elapsedMs() == last)
                .map(WindPhase::atMs)
                .findFirst();
    }

    /** As {@link Wind#turnsGoOn}: what takes a mistaken break back puts nothing on. */
    static boolean turnsGoOn(List<WindPhase> phases) {
        boolean broke = false;
        boolean again = false;
        for (WindPhase tap : phases) {
            boolean takesBack = broke && tap.phase().equals(WindPhase.AGAIN);
            broke = tap.phase().equals(WindPhase.BROKE) || broke && !takesBack;
            again = tap.phase().equals(WindPhase.AGAIN) && !takesBack
                    || again && !tap.phase().equals(WindPhase.STOPPED);
        }
        return again && since(phases).isEmpty();
    }
}
