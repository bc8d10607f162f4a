package org.skeinday.cli;

import java.util.List;

/** The commands that compute something and need no record. */
final class Computing implements MoreCommands {
    private static final List<String> NAMES =
            List.of("winding", "official-time", "break-risk", "curve", "flight", "dayplan");

    @Override
    public List<String> names() {
        return NAMES;
    }

    @Override
    public Object make(String name) {
        switch (name) {
            case "winding":
                return new WindingCommand();
            case "official-time":
                return new OfficialTimeCommand();
            case "break-risk":
                return new BreakRiskCommand();
            case "curve":
                return new CurveCommand();
            case "flight":
                return new FlightCommand();
            case "dayplan":
                return new DayPlanCommand(System::nanoTime);
            default:
                throw new IllegalArgumentException("There is no command " + name);
        }
    }
}
