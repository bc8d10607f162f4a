package org.skeinday.device.web;

import java.util.List;

/**
 * What devices join by, as the laptop shows it.
 *
 * @param code to be typed, in two groups
 * @param links the whole join link by each address, to be sent
 * @param qrPath the join link as SVG path
 * @param network how tablets reach the laptop
 */
public record InvitationView(String code, List<String> links, String qrPath, int qrSide, NetworkView network) {
    public String qrBox() {
        return "0 0 " + qrSide + " " + qrSide;
    }
}
