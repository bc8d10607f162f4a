package org.skeinday.device.web;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** This machine's own names and addresses. */
public final class Addresses {
    private static final Pattern VIRTUAL = Pattern.compile("^(docker|veth|br-|virbr|vmnet|vboxnet|tun|tap|utun|wg|zt)");

    private static final Pattern NUMBERS = Pattern.compile("[0-9.]+");

    /** The one that tablets are told, by {@code --host}; empty to pick one. */
    private final String chosen;

    public Addresses() {
        this("");
    }

    public Addresses(String chosen) {
        this.chosen = chosen.toLowerCase(Locale.ROOT);
    }

    public Set<String> names() {
        Set<String> names = new HashSet<>(Set.of("localhost", "127.0.0.1"));
        if (isChosen()) {
            names.add(chosen);
        }
        for (InetAddress address : all()) {
            names.add(address.getHostAddress().toLowerCase(Locale.ROOT));
        }
        return names;
    }

    /** The address that tablets most likely reach, else localhost. */
    public String best() {
        return forTablets().stream().findFirst().orElse("localhost");
    }

    /** The chosen one, then those that were found. */
    public List<String> forTablets() {
        return isChosen()
                ? Stream.concat(Stream.of(chosen), found().stream().filter(one -> !one.equals(chosen)))
                        .toList()
                : found();
    }

    /** A name always; an address while this machine has it: the router may give another from one day to the next. */
    private boolean isChosen() {
        return !chosen.isEmpty()
                && (!NUMBERS.matcher(chosen).matches()
                        || all().stream().anyMatch(own -> own.getHostAddress().equals(chosen)));
    }

    /** IPv4 addresses of networks that are up, those of a hall's own router first. */
    private static List<String> found() {
        try {
            return NetworkInterface.networkInterfaces()
                    .filter(Addresses::mayCarryTablets)
                    .flatMap(NetworkInterface::inetAddresses)
                    .filter(a -> a instanceof Inet4Address && !a.isLoopbackAddress() && !a.isLinkLocalAddress())
                    .map(InetAddress::getHostAddress)
                    .sorted(Comparator.comparing(Addresses::rank).thenComparing(Comparator.naturalOrder()))
                    .toList();
        } catch (SocketException e) {
            return List.of();
        }
    }

    /** Bridges of virtual machines and containers, tunnels of a VPN: no tablet is there. */
    private static boolean mayCarryTablets(NetworkInterface network) {
        try {
            return network.isUp()
                    && !network.isLoopback()
                    && !network.isPointToPoint()
                    && !network.isVirtual()
                    && !VIRTUAL.matcher(network.getName()).find();
        } catch (SocketException e) {
            return false;
        }
    }

    private static int rank(String address) {
        return address.startsWith("192.168.") ? 0 : address.startsWith("10.") ? 1 : address.startsWith("172.") ? 2 : 3;
    }

    private static Set<InetAddress> all() {
        Set<InetAddress> all = new HashSet<>();
        try {
            NetworkInterface.networkInterfaces()
                    .flatMap(NetworkInterface::inetAddresses)
                    .forEach(all::add);
        } catch (SocketException e) {
            all.add(InetAddress.getLoopbackAddress()); // no network: the laptop alone still works
        }
        return all;
    }
}
