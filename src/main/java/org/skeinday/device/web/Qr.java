package org.skeinday.device.web;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;

/** A link as a QR code (ISO/IEC 18004). */
public final class Qr {
    private Qr() {}

    /** Path data for an SVG whose view box is {@link #side} units wide: one unit square per dark module. */
    public static String path(String text) {
        BitMatrix code = code(text);
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < code.getHeight(); y++) {
            for (int x = 0; x < code.getWidth(); x++) {
                if (code.get(x, y)) {
                    path.append('M').append(x).append(' ').append(y).append("h1v1h-1z");
                }
            }
        }
        return path.toString();
    }

    public static int side(String text) {
        return code(text).getWidth();
    }

    /** For a terminal: two rows of modules in each line, by half blocks, light on dark. */
    public static String forTerminal(String text) {
        BitMatrix code = code(text);
        StringBuilder out = new StringBuilder();
        for (int y = 0; y < code.getHeight(); y += 2) {
            for (int x = 0; x < code.getWidth(); x++) {
                boolean top = !code.get(x, y);
                boolean bottom = y + 1 < code.getHeight() && !code.get(x, y + 1);
                out.append(top ? (bottom ? '█' : '▀') : (bottom ? '▄' : ' '));
            }
            out.append('\n');
        }
        return out.toString();
    }

    private static BitMatrix code(String text) {
        try {
            return new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 0, 0);
        } catch (WriterException e) {
            throw new IllegalArgumentException("A link that fits a QR code must be shorter than " + text.length(), e);
        }
    }
}
