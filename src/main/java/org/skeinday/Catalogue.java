package org.skeinday;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.skeinday.attempt.action.AfterFlight;
import org.skeinday.attempt.action.AimActions;
import org.skeinday.attempt.action.AttemptActions;
import org.skeinday.attempt.action.AttemptsWoundAt;
import org.skeinday.attempt.action.ChooseStation;
import org.skeinday.attempt.action.FlightWorth;
import org.skeinday.attempt.action.PlaceReopens;
import org.skeinday.attempt.action.ResultActions;
import org.skeinday.attempt.action.SaidInLists;
import org.skeinday.attempt.action.StartWindow;
import org.skeinday.attempt.action.UseEvent;
import org.skeinday.attempt.action.WatchActions;
import org.skeinday.attempt.action.WindingGate;
import org.skeinday.attempt.store.AttemptFacts;
import org.skeinday.audit.store.AuditStore;
import org.skeinday.bench.action.BenchActions;
import org.skeinday.bench.action.WatchHook;
import org.skeinday.bench.action.WindActions;
import org.skeinday.bench.action.WindingTaps;
import org.skeinday.contest.store.ContestFacts;
import org.skeinday.dayplan.action.SetbackActions;
import org.skeinday.dayplan.action.TakePlan;
import org.skeinday.dayplan.store.PlanStore;
import org.skeinday.device.action.DeviceActions;
import org.skeinday.device.store.DeviceStore;
import org.skeinday.evidence.store.EvidenceStore;
import org.skeinday.exchange.action.ImportFiles;
import org.skeinday.exchange.action.TakeHistory;
import org.skeinday.hall.action.HallActions;
import org.skeinday.hall.action.PlaceActions;
import org.skeinday.hall.store.HallStore;
import org.skeinday.hall.store.PlaceStore;
import org.skeinday.motor.store.MotorFacts;
import org.skeinday.motor.store.MotorLifeFacts;
import org.skeinday.paper.action.KeyIn;
import org.skeinday.paper.action.PrintCards;
import org.skeinday.platform.http.NavItem;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Erasing;
import org.skeinday.platform.record.FactKind;
import org.skeinday.platform.record.Projection;
import org.skeinday.prepare.action.PutRow;
import org.skeinday.review.action.EveningActions;
import org.skeinday.review.store.ReviewFacts;
import org.skeinday.steps.action.StepActions;
import org.skeinday.steps.store.StepsFacts;
import org.skeinday.winding.store.WindFacts;

/** What the program consists of: the words of the bar, what may come as a tap, every kind of fact and of act. */
public final class Catalogue {
    static final List<NavItem> BAR = List.of(
            new NavItem("Now", "/", Role.VIEWER),
            new NavItem("Day", "/day", Role.VIEWER),
            new NavItem("Bench", "/bench", Role.HELPER),
            new NavItem("Checks", "/checks", Role.HELPER),
            new NavItem("Winding", "/winding", Role.HELPER),
            new NavItem("Timing", "/timing", Role.TIMEKEEPER),
            new NavItem("Wall", "/results/wall", Role.SPECTATOR, Role.SPECTATOR),
            new NavItem("Result sheet", "/results", Role.SPECTATOR),
            new NavItem("Order", "/results/order", Role.SPECTATOR, Role.SPECTATOR),
            new NavItem("Practice", "/practice", Role.HELPER),
            new NavItem("Evening", "/evening", Role.CAPTAIN),
            new NavItem("Prepare", "/prepare", Role.CAPTAIN),
            new NavItem("Join", "/join", Role.CAPTAIN));

    /** What may come as a tap, and from which role on; everything else has a form with checks of its own. */
    static final Map<String, Role> TAPS = Map.ofEntries(
            Map.entry("watch.release", Role.TIMEKEEPER),
            Map.entry("watch.landing", Role.TIMEKEEPER),
            Map.entry("watch.mark", Role.TIMEKEEPER),
            Map.entry("bench.step", Role.HELPER),
            Map.entry("bench.undo", Role.HELPER),
            Map.entry("bench.place", Role.HELPER),
            Map.entry("bench.impound", Role.HELPER),
            Map.entry("wind.begin", Role.HELPER),
            Map.entry("wind.alone", Role.HELPER),
            Map.entry("wind.mark", Role.HELPER),
            Map.entry("wind.phase", Role.HELPER),
            Map.entry("wind.leave-out", Role.HELPER),
            Map.entry("wind.confirm", Role.HELPER),
            Map.entry("wind.take-over", Role.HELPER),
            Map.entry("wind.set", Role.HELPER),
            Map.entry("wind.floor-mark", Role.HELPER),
            Map.entry("wind.undo", Role.HELPER),
            Map.entry("station.output", Role.HELPER),
            Map.entry("attempt.take-motor", Role.HELPER),
            Map.entry("attempt.station", Role.HELPER),
            Map.entry("step.tick", Role.HELPER),
            Map.entry("step.read-aloud", Role.HELPER),
            Map.entry("step.skip", Role.HELPER),
            Map.entry("step.undo", Role.HELPER),
            Map.entry("caution.met", Role.HELPER),
            Map.entry("clock.slept", Role.HELPER));

    private Catalogue() {}

    public static Projection projection() {
        List<FactKind> kinds = new ArrayList<>();
        kinds.addAll(ContestFacts.kinds());
        kinds.addAll(EvidenceStore.kinds());
        kinds.addAll(MotorFacts.kinds());
        kinds.addAll(MotorLifeFacts.kinds());
        kinds.addAll(WindFacts.kinds());
        kinds.addAll(AttemptFacts.kinds());
        kinds.addAll(StepsFacts.kinds());
        kinds.addAll(PlaceStore.kinds());
        kinds.addAll(HallStore.kinds());
        kinds.addAll(Erasing.facts());
        kinds.addAll(PlanStore.kinds());
        kinds.addAll(ReviewFacts.kinds());
        kinds.addAll(DeviceStore.factKinds());
        return new Projection(kinds, AuditStore::note);
    }

    public static List<ActKind<?>> actKinds(ActStore record) {
        List<ActKind<?>> kinds = new ArrayList<>();
        kinds.addAll(AttemptActions.kinds(record.people()::names));
        kinds.addAll(ResultActions.kinds());
        kinds.addAll(AimActions.kinds(record.people()::names));
        kinds.addAll(ChooseStation.kinds(record.people()::names));
        kinds.addAll(StartWindow.kinds(record.people()::names));
        kinds.addAll(UseEvent.kinds());
        kinds.addAll(AfterFlight.kinds());
        kinds.addAll(FlightWorth.kinds());
        kinds.addAll(WatchActions.kinds());
        kinds.addAll(WindingGate.kinds(record.people()::names));
        kinds.addAll(StepActions.kinds(SaidInLists::elsewhere, new AttemptsWoundAt()));
        kinds.addAll(PlaceActions.kinds(PlaceReopens::byPlace));
        kinds.addAll(Erasing.kinds(record.people()));
        kinds.addAll(HallActions.kinds(PlaceReopens::byPlace));
        kinds.addAll(TakePlan.kinds());
        kinds.addAll(SetbackActions.kinds());
        kinds.addAll(BenchActions.kinds(record.people()::names));
        kinds.addAll(WindActions.kinds());
        kinds.addAll(WindingTaps.kinds());
        kinds.addAll(WatchHook.kinds());
        kinds.addAll(DeviceActions.actKinds());
        kinds.addAll(EveningActions.kinds(record.people()::names));
        kinds.addAll(ImportFiles.kinds(record.people()::names));
        kinds.addAll(TakeHistory.kinds(record.people()::names));
        kinds.addAll(PutRow.kinds(record.people()::names));
        kinds.addAll(KeyIn.kinds(record.people()::names));
        kinds.addAll(PrintCards.kinds());
        return kinds;
    }
}
