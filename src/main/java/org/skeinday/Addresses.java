package org.skeinday;

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

/** This machine's own names and addresses. */
final class Addresses {
    private static final Pattern VIRTUAL = Pattern.compile("^(docker|veth|br-|virbr|vmnet|vboxnet|tun|tap|utun|wg|zt)");

    Set<String> names() {
        Set<String> names = new HashSet<>(Set.of("localhost", "127.0.0.1"));
        for (InetAddress address : all()) {
            names.add(address.getHostAddress().toLowerCase(Locale.ROOT));
        }
        return names;
    }

    /** The address that tablets most likely reach, else localhost. */
    String best() {
        return forTablets().stream().findFirst().orElse("localhost");
    }

    /** IPv4 addresses of networks that are up, those of a hall's own router first. */
    List<String> forTablets() {
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
