package org.skeinday.device.web;

import java.util.List;

/**
 * What devices join by, as the laptop shows it.
 *
 * @param code to be typed, in two groups
 * @param links the whole join link by each address, to be sent
 * @param qrPath the join link as SVG path
 * @param spectators the address for who only looks on
 * @param network how tablets reach the laptop
 */
public record InvitationView(
        String code, List<String> links, String qrPath, int qrSide, Spectators spectators, NetworkView network) {
    /** The spectators' address, to be scanned or typed. */
    public record Spectators(String link, String qrPath, int qrSide) {
        public String qrBox() {
            return box(qrSide);
        }
    }

    public String qrBox() {
        return box(qrSide);
    }

    private static String box(int side) {
        return "0 0 " + side + " " + side;
    }
}
