package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.attempt.web.HostedDay;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Json;

/** The day on paper: printed by the browser on each size, written on, keyed in. */
@Timeout(180)
class PaperBrowserIT {
    /** Name, width and height in inches. */
    private record Sheet(String name, double width, double height) {}

    private static final List<Sheet> SHEETS =
            List.of(new Sheet("A4", 8.27, 11.69), new Sheet("A5", 5.83, 8.27), new Sheet("Letter", 8.5, 11));

    private static final double MARGIN = 0.4;

    private final ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);

    @TempDir
    Path root;

    private PDDocument print(App app, String path, Sheet sheet) throws Exception {
        laptop.get("http://localhost:" + app.port() + path);
        laptop.findElement(By.id("content"));
        Map<String, Object> printed = laptop.executeCdpCommand(
                "Page.printToPDF",
                Map.of(
                        "paperWidth", sheet.width,
                        "paperHeight", sheet.height,
                        "marginTop", MARGIN,
                        "marginBottom", MARGIN,
                        "marginLeft", MARGIN,
                        "marginRight", MARGIN));
        byte[] pdf = Base64.getDecoder().decode((String) printed.get("data"));
        String shots = System.getProperty("shots", "");
        PDDocument document = Loader.loadPDF(pdf);
        if (!shots.isEmpty()) {
            String name = "paper" + path.replaceAll("[/?=]+", "-").replaceAll("[0-9a-f]{32}-0", "x") + "-" + sheet.name;
            var image = new PDFRenderer(document).renderImageWithDPI(0, 80);
            Files.createDirectories(Path.of(shots));
            javax.imageio.ImageIO.write(
                    image, "png", Path.of(shots, name + ".png").toFile());
        }
        return document;
    }

    private static String text(PDDocument document, int page) throws Exception {
        var stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        stripper.setSortByPosition(true);
        return stripper.getText(document).replace('\u00a0', ' ');
    }

    private static void assertHas(String text, String... words) {
        for (String word : words) {
            assertTrue(text.contains(word), word + " in " + text);
        }
    }

    /** A code of the first page as a phone's camera reads it. */
    private static String decoded(PDDocument document) throws Exception {
        List<String> missed = new ArrayList<>();
        for (int dpi : new int[] {300, 400, 600}) { // a camera takes more than one picture, too
            try {
                return decoded(document, dpi);
            } catch (ReaderException e) {
                missed.add(dpi + " dpi: " + e);
            }
        }
        throw new AssertionError("The code of the first tag was not read: " + missed);
    }

    private static String decoded(PDDocument document, int dpi) throws Exception {
        int from = (int) (MARGIN * dpi);
        int side = (int) (1.25 * dpi); // the first tag's code, at the top left
        var image = new PDFRenderer(document).renderImageWithDPI(0, dpi);
        int[] pixels = image.getRGB(from, from, side, side, null, 0, side);
        var source = new RGBLuminanceSource(side, side, pixels);
        return new QRCodeReader()
                .decode(new BinaryBitmap(new HybridBinarizer(source)), Map.of(DecodeHintType.TRY_HARDER, true))
                .getText();
    }

    /** Black on white: no ink is wasted on a ground, nothing needs colour. */
    private static void assertBlack(PDDocument document) throws Exception {
        var image = new PDFRenderer(document).renderImageWithDPI(0, 50);
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                int rgb = image.getRGB(x, y);
                int r = rgb >> 16 & 255;
                int g = rgb >> 8 & 255;
                int b = rgb & 255;
                assertTrue(Math.abs(r - g) < 24 && Math.abs(g - b) < 24, "colour at " + x + ", " + y);
            }
        }
        assertEquals(0xFFFFFF, image.getRGB(2, 2) & 0xFFFFFF, "the ground");
    }

    @Test
    void attempt_cards_print_one_to_a_page_on_every_size() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            for (Sheet sheet : SHEETS) {
                try (PDDocument pdf = print(app, "/cards", sheet)) {
                    assertEquals(6, pdf.getNumberOfPages(), sheet.name + ": two own entries with three attempts each");
                    for (int page = 1; page <= 6; page++) {
                        String card = text(pdf, page);
                        assertHas(card, page <= 3 ? "Avocet, attempt " + page : "Curlew, attempt " + (page - 3));
                        assertHas(card, "clockwise", "Crank turns", "Last turn at", "Watch 2", "Remaining");
                        assertHas(card, "Anyone says stop", "Caution.", "7:15 after opening", "Ines");
                    }
                    assertBlack(pdf);
                }
            }
        }
    }

    /** How much of a page is dark, as a share of its dots. */
    private static double ink(PDDocument document, int page) throws Exception {
        var image = new PDFRenderer(document).renderImageWithDPI(page - 1, 50);
        long dark = 0;
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                dark += (image.getRGB(x, y) & 0xFF) < 128 ? 1 : 0;
            }
        }
        return (double) dark / image.getWidth() / image.getHeight();
    }

    @Test
    void timekeepers_cards_print_for_all_entries_of_a_hosted_day_with_room_to_write() throws Exception {
        Path day = HostedDay.into(root.resolve("cards"), 14, 2, 31);
        try (App app = Demo.startEmpty(day)) {
            for (Sheet sheet : SHEETS) {
                try (PDDocument pdf = print(app, "/cards/host", sheet)) {
                    String all = "";
                    for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
                        assertTrue(ink(pdf, page) > 0.004, sheet.name + ": hardly anything on page " + page);
                        all += text(pdf, page);
                    }
                    int cards = all.split("Called at", -1).length - 1;
                    assertTrue(cards > 4, all);
                    assertEquals(cards, all.split("Competitor", -1).length - 1);
                    assertEquals(cards, all.split("Watch 2", -1).length - 1, "none is cut in two");
                    assertHas(all, "Team 1", "2 timekeepers");
                    assertBlack(pdf);
                }
            }
        }
    }

    @Test
    void the_result_of_29_entries_prints_from_the_first_page_on_with_numbered_pages() throws Exception {
        Path day = HostedDay.into(root.resolve("many"), 29, 4, 20_260_509);
        try (App app = Demo.startEmpty(day)) {
            for (Sheet sheet : SHEETS) {
                try (PDDocument pdf = print(app, "/results/print", sheet)) {
                    int pages = pdf.getNumberOfPages();
                    String first = text(pdf, 1);
                    assertHas(first, "Mudflat Open", "Sat 9 May 2026", "Saltmarsh Hall", "Over all", "Provisional");
                    assertHas(first, "Curlew", "best 2", "repeat");
                    String all = "";
                    for (int page = 1; page <= pages; page++) {
                        String shown = text(pdf, page);
                        assertHas(shown, "Page " + page + " of " + pages);
                        assertTrue(ink(pdf, page) > 0.004, sheet.name + ": hardly anything on page " + page);
                        all += shown;
                    }
                    assertHas(all, "Division juniors", "Division open", "Annex: each attempt", "chief", "competitor");
                    assertBlack(pdf);
                }
                try (PDDocument pdf = print(app, "/results", sheet)) {
                    assertHas(text(pdf, 1), "Place", "Curlew");
                    assertTrue(ink(pdf, 1) > 0.01, sheet.name + ": the first page is blank");
                }
            }
        }
    }

    @Test
    void tags_log_and_dispute_print_on_every_size() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor visitor = new Visitor(app.port(), "", 1);
            String attempt = CalledForTests.call(visitor);
            ObjectNode landing = Json.MAPPER.createObjectNode();
            landing.put("attempt", attempt).put("slot", 1).put("ms", 61_210);
            visitor.taps(Json.MAPPER.createArrayNode().add(Visitor.tap(visitor.newId(), "watch.landing", landing)));
            visitor.form("/attempt/announce", Map.of("attempt", attempt, "announced", "1:00.9"));
            for (Sheet sheet : SHEETS) {
                try (PDDocument pdf = print(app, "/tags", sheet)) {
                    String all = new PDFTextStripper().getText(pdf);
                    assertHas(all, "A1", "C5", "batch B", "clockwise");
                    assertTrue(pdf.getNumberOfPages() <= 4, sheet.name + " " + pdf.getNumberOfPages());
                    assertTrue(decoded(pdf).startsWith(app.invitation().address() + "/bench/motor/"), sheet.name);
                    assertBlack(pdf);
                }
                try (PDDocument pdf = print(app, "/log", sheet)) {
                    assertEquals(1, pdf.getNumberOfPages(), sheet.name);
                    assertHas(text(pdf, 1), "Flight log Saltmarsh Rotor Day", "2:05.83", "Signed by the coach");
                    assertBlack(pdf);
                }
                try (PDDocument pdf = print(app, "/dispute/" + attempt, sheet)) {
                    assertEquals(1, pdf.getNumberOfPages(), sheet.name);
                    assertHas(
                            text(pdf, 1),
                            "Curlew, attempt 1",
                            "Our watches",
                            "Watch 1",
                            "1:01.21",
                            "1:00.90",
                            "contact 5.2",
                            "Witness",
                            "Captain");
                }
                try (PDDocument pdf = print(app, "/results", sheet)) {
                    assertEquals(1, pdf.getNumberOfPages(), sheet.name);
                    assertHas(text(pdf, 1), "Curlew", "Whimbrel");
                }
            }
        }
    }

    /** The page Prepare promises one sheet. */
    @Test
    void the_guide_prints_on_one_sheet() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            for (Sheet sheet : SHEETS) {
                if (sheet.name.equals("A5")) {
                    continue;
                }
                try (PDDocument pdf = print(app, "/guide", sheet)) {
                    assertEquals(1, pdf.getNumberOfPages(), sheet.name);
                    assertHas(text(pdf, 1), "A day with Skeinday", "Caution.", "Evening", "Join");
                    assertBlack(pdf);
                }
            }
        }
    }

    /** About 40 s a card: at two strokes a second that is 80 strokes. */
    @Test
    void a_card_is_keyed_in_with_the_keyboard_alone_in_at_most_eighty_strokes() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            laptop.get("http://localhost:" + app.port() + "/key-in");
            new WebDriverWait(laptop, Duration.ofSeconds(10))
                    .until(b -> "k-entry".equals(b.switchTo().activeElement().getDomAttribute("id")));
            Sight.look(laptop, "key-in-empty");
            int strokes = 0;
            strokes += type("C"); // Curlew
            strokes += tab(""); // the attempt's number is offered
            strokes += tab("Reed One");
            strokes += tab("A3");
            strokes += tab("B2");
            strokes += tab("201");
            strokes += tab(".62in-ozf");
            strokes += tab("3");
            strokes += tab(".41in-ozf");
            strokes += tab("");
            strokes += tab("1:43.6");
            strokes += tab("1:43.7");
            strokes += tab("22");
            strokes += type(Keys.ENTER);
            new WebDriverWait(laptop, Duration.ofSeconds(10))
                    .until(b ->
                            b.findElement(By.id("key-in")).getText().contains("Saved from paper: Curlew, attempt 1"));
            System.out.println("a card took " + strokes + " strokes");
            assertTrue(strokes <= 80, strokes + " strokes");
            assertEquals("k-entry", laptop.switchTo().activeElement().getDomAttribute("id"), "ready for the next");
            Sight.look(laptop, "key-in-saved");
        }
    }

    private int type(CharSequence keys) {
        new Actions(laptop).sendKeys(keys).perform();
        return keys.length();
    }

    /** On to the next field, which is replaced by what is typed. */
    private int tab(String text) {
        new Actions(laptop).sendKeys(Keys.TAB).perform();
        return 1 + (text.isEmpty() ? 0 : type(text));
    }
}
