package org.skeinday.steps;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.skeinday.motor.Direction;
import org.skeinday.units.BareNumber;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.Preconditions;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;

/** What an item is answered with: a value where there is one, which is then the same act as on its own page. */
public enum ItemAnswer {
    OK,
    /** Of the motor in hand: cw or acw, seen from the winder. */
    DIRECTION,
    LAUNCH_TORQUE,
    LANE_LENGTH,
    /** What the mount held in the pull test. */
    NEWTONS,
    /** Motor turns to one crank turn. */
    RATIO,
    MASS,
    /** Crank turns or contacts. */
    COUNT,
    /** The winding place's verdict, which the program fills in: clear, or how many things are too close. */
    PLACE;

    public static final List<String> WORDS = EnumWords.of(ItemAnswer.class);

    public String word() {
        return EnumWords.of(this);
    }

    /** @throws IllegalArgumentException for another word */
    public static ItemAnswer ofWord(String word) {
        return EnumWords.parse("An answer", ItemAnswer.class, word);
    }

    public boolean isValue() {
        return this != OK;
    }

    /** In which unit a bare number is taken, as it stands beside the item; empty for what has none. */
    public String under(UnitSystem units) {
        return switch (this) {
            case LAUNCH_TORQUE -> units.torqueUnitTyped();
            case LANE_LENGTH -> units.roomUnit();
            case MASS -> units.massUnit();
            case OK, DIRECTION, NEWTONS, RATIO, COUNT, PLACE -> "";
        };
    }

    /**
     * What people type, as it is kept: a unit that stands beside the item may be typed or left out, and a decimal comma is
     * as good as a point.
     *
     * @param units of the team
     */
    public String plain(String typed, UnitSystem units) {
        return plain(typed, under(units));
    }

    /** The same. @param under the unit that stood beside the item when it was answered; of no use for what has none */
    public String plain(String typed, String under) {
        String text = under(UnitSystem.METRIC).isEmpty() ? typed.strip() : BareNumber.with(typed, under);
        return switch (this) {
            case NEWTONS ->
                text.replaceFirst("(?i)(?<=[0-9]) ?(n|newtons?)$", "").replace(',', '.');
            case RATIO -> text.replaceFirst("(?<=[0-9]) ?(: ?1|to 1)$", "").replace(',', '.');
            default -> text;
        };
    }

    /** Why this text is no such answer, and what would be one; empty when it is. */
    public Optional<String> refuses(String typed) {
        try {
            switch (this) {
                case OK -> {}
                case DIRECTION -> beDirection(typed);
                case LAUNCH_TORQUE -> Torque.parse(typed);
                case LANE_LENGTH -> Length.parse(typed);
                case NEWTONS -> beNumber(typed, "0.1", "1000", "newtons, for example 12");
                case RATIO -> beNumber(typed, "1", "50", "motor turns to one crank turn, for example 10");
                case MASS -> Mass.parse(typed);
                case COUNT -> beWhole(typed);
                case PLACE -> Preconditions.filled("The place's verdict", typed);
            }
            return Optional.empty();
        } catch (IllegalArgumentException e) {
            return Optional.of(String.valueOf(e.getMessage()));
        }
    }

    private static void beDirection(String typed) {
        if (!Direction.WORDS.contains(typed)) {
            throw new IllegalArgumentException("'" + typed + "' is no direction; choose " + Direction.CW.words()
                    + " or " + Direction.ACW.words() + ", seen from the winder");
        }
    }

    private static void beNumber(String typed, String least, String most, String right) {
        if (!typed.strip().matches("[0-9]{1,6}(\\.[0-9]{1,6})?")
                || new BigDecimal(typed.strip()).compareTo(new BigDecimal(least)) < 0
                || new BigDecimal(typed.strip()).compareTo(new BigDecimal(most)) > 0) {
            throw new IllegalArgumentException(
                    "'" + typed + "' is no number from " + least + " to " + most + "; write " + right);
        }
    }

    private static void beWhole(String typed) {
        if (!typed.strip().matches("[0-9]{1,4}")) {
            throw new IllegalArgumentException("'" + typed + "' is no count; write a whole number, for example 0");
        }
    }
}
