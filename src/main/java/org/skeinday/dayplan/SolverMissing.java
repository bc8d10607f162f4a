package org.skeinday.dayplan;

/** The solver's native part cannot run here; everything but computing a plan goes on. */
public final class SolverMissing extends RuntimeException {
    private static final long serialVersionUID = 1;

    SolverMissing(String reason, Throwable cause) {
        super(
                "No day plan can be computed on this laptop: the solver's native part did not load (" + reason
                        + "). Plan by hand; a plan that is there stays and can be changed.",
                cause);
    }
}
