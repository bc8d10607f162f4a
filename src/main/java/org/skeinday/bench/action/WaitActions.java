package org.skeinday.bench.action;

import org.skeinday.motor.ClockJump;
import org.skeinday.motor.Wait;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** How long is waited, and what a jump of the laptop's clock was. */
final class WaitActions {
    private WaitActions() {}

    /** The seconds of one wait, as typed in minutes. */
    record Change(String name, String least, String wished, String longest, boolean required) {}

    /** The laptop's clock came apart from its monotonic clock. */
    record Jump(long byMs) {}

    /** What the jump was. */
    record Slept(String jump, boolean slept) {}

    static Decision change(Tx tx, ActContext context, Change change) {
        try {
            Integer longest = change.longest().isBlank() ? null : seconds("longest", change.longest());
            var wait = new Wait(
                    change.name(),
                    seconds("least", change.least()),
                    seconds("wished", change.wished()),
                    longest,
                    change.required());
            return Decision.decided(BenchActions.TOPICS, Fact.of("motor.wait", wait));
        } catch (IllegalArgumentException e) {
            return Decision.refused("wait", String.valueOf(e.getMessage()));
        }
    }

    /** Minutes with at most two decimals, or min:s. */
    private static int seconds(String what, String typed) {
        String text = typed.strip().replace(',', '.');
        if (text.matches("\\d{1,4}:[0-5]\\d")) {
            return Integer.parseInt(text.replaceFirst(":.*", "")) * 60 + Integer.parseInt(text.replaceFirst(".*:", ""));
        }
        if (!text.matches("\\d{1,4}(\\.\\d{1,2})?")) {
            throw new IllegalArgumentException(
                    "The " + what + " wait must be minutes, for example 5 or 2:30, but was '" + typed + "'");
        }
        return (int) Math.round(Double.parseDouble(text) * 60);
    }

    static Decision jumped(Tx tx, ActContext context, Jump jump) {
        var fact = new ClockJump(context.ownId(), context.now().toEpochMilli(), jump.byMs(), null);
        return Decision.decided(BenchActions.TOPICS, Fact.of("clock.jumped", fact));
    }

    static Decision slept(Tx tx, ActContext context, Slept slept) {
        ClockJump jump = MotorLifeStore.jump(tx, slept.jump()).orElse(null);
        if (jump == null || jump.slept() != null) {
            return Decision.refused("Somebody has said already what that jump of the clock was; look again");
        }
        var fact = new ClockJump(jump.id(), jump.atMs(), jump.byMs(), slept.slept());
        return Decision.decided(BenchActions.TOPICS, Fact.of("clock.slept", fact));
    }
}
