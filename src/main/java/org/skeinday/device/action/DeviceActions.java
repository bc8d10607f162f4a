package org.skeinday.device.action;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.device.Device;
import org.skeinday.device.DeviceAnswered;
import org.skeinday.device.DeviceChanged;
import org.skeinday.device.DeviceEnded;
import org.skeinday.device.DeviceJoined;
import org.skeinday.device.LaptopLent;
import org.skeinday.device.store.DeviceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Devices join and are ended. The join code and the PIN are checked before, where the secrets are known. */
public final class DeviceActions {
    /** Content of {@code device.join}: only the hash of the token ever reaches the record. */
    public record Join(
            String tokenHash,
            String person,
            String role,
            @Nullable String joiningHash,
            @Nullable String asked) {}

    /** Content of {@code device.change}: who uses a joined device, and for what, from now on. */
    public record Change(
            String device,
            String tokenHash,
            String person,
            String role,
            @Nullable String earlierHash,
            @Nullable String earlierRole,
            @Nullable String asked) {}

    /**
     * Content of {@code device.answer}: the coach's yes or no to what a device asks to be.
     *
     * @param asked role that the coach has read, and {@code person} by whom; another answers nothing
     */
    public record Answer(String device, boolean yes, String asked, String person) {}

    /** Content of {@code device.end}. @param linkHash of the join link's token: the device joins again by another only */
    public record End(String device, String linkHash) {}

    /** Content of {@code laptop.lend}. */
    public record Lend(boolean lent) {}

    private static final String ENDED = "This device is not joined any more.";

    private DeviceActions() {}

    public static List<ActKind<?>> actKinds() {
        return List.of(
                new ActKind<>("device.join", Join.class, DeviceActions::join),
                new ActKind<>("device.change", Change.class, DeviceActions::change),
                new ActKind<>("device.answer", Answer.class, DeviceActions::answer),
                new ActKind<>("device.end", End.class, DeviceActions::end),
                new ActKind<>("laptop.lend", Lend.class, DeviceActions::lend));
    }

    private static Decision join(Tx tx, ActContext context, Join content) {
        return Decision.decided(
                Set.of("devices"),
                Fact.of(
                        "device.joined",
                        new DeviceJoined(
                                context.nextId(),
                                content.tokenHash(),
                                content.person(),
                                content.role(),
                                context.now().toEpochMilli(),
                                content.joiningHash(),
                                content.asked())));
    }

    private static Decision lend(Tx tx, ActContext context, Lend content) {
        return Decision.decided(
                Set.of("devices"),
                Fact.of(
                        "laptop.lent",
                        new LaptopLent(content.lent(), context.now().toEpochMilli())));
    }

    private static Decision change(Tx tx, ActContext context, Change content) {
        return DeviceStore.ofId(tx, content.device()).isEmpty()
                ? Decision.unknown(ENDED)
                : Decision.decided(
                        Set.of("devices"),
                        Fact.of(
                                "device.changed",
                                new DeviceChanged(
                                        content.device(),
                                        content.tokenHash(),
                                        content.person(),
                                        content.role(),
                                        context.now().toEpochMilli(),
                                        content.earlierHash(),
                                        content.earlierRole(),
                                        content.asked())));
    }

    private static Decision answer(Tx tx, ActContext context, Answer content) {
        Device device = DeviceStore.ofId(tx, content.device()).orElse(null);
        if (device == null || device.asked().isEmpty()) {
            return Decision.refused("This device asks for nothing any more.");
        }
        String asked = device.asked();
        return !asked.equals(content.asked()) || !device.person().equals(content.person())
                ? Decision.refused("This device asks for something else by now. Read it again, then answer.")
                : Decision.decided(
                        Set.of("devices"),
                        Fact.of(
                                "device.answered",
                                new DeviceAnswered(
                                        content.device(),
                                        content.yes() ? asked : "",
                                        context.now().toEpochMilli())));
    }

    private static Decision end(Tx tx, ActContext context, End content) {
        return DeviceStore.ofId(tx, content.device()).isEmpty()
                ? Decision.unknown(ENDED)
                : Decision.decided(
                        Set.of("devices"),
                        Fact.of(
                                "device.ended",
                                new DeviceEnded(content.device(), context.now().toEpochMilli(), content.linkHash())));
    }
}
