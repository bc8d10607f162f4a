package org.skeinday.device.web;

import java.util.List;
import java.util.function.IntSupplier;
import org.skeinday.device.TypedCode;

/** How a tablet comes in: where the laptop is reached, the link to scan and the code to type. */
public final class Invitation {
    private final Addresses addresses;
    private final KeptCodes codes;
    private final IntSupplier port;

    /** @param port known once the server listens */
    public Invitation(Addresses addresses, KeptCodes codes, IntSupplier port) {
        this.addresses = addresses;
        this.codes = codes;
        this.port = port;
    }

    /** The address that tablets use: the first private one, else the laptop's own. */
    public String address() {
        return at(addresses.best());
    }

    /** Addresses beside the first, for a laptop in several networks. */
    public List<String> otherAddresses() {
        return addresses.forTablets().stream().skip(1).map(this::at).toList();
    }

    private String at(String host) {
        return "http://" + host + ":" + port.getAsInt();
    }

    public String joinLink() {
        return address() + "/join#" + codes.link().text();
    }

    /** Whether the join code was lost and this start made another: what hangs on walls leads nowhere any more. */
    public boolean isJoinCodeNew() {
        return codes.isLinkNew();
    }

    /** What is typed in place of the link, as it is read aloud. */
    public String typedCode() {
        return TypedCode.shown(codes.typed());
    }

    /** Whether this laptop has no address that a tablet could reach. */
    public boolean isAlone() {
        return addresses.forTablets().isEmpty();
    }
}
