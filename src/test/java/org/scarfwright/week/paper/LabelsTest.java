package org.scarfwright.week.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.LuminanceSource;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scarfwright.measure.Length;
import org.scarfwright.shop.LabelPaper;
import org.scarfwright.shop.LabelSheet;

/** Labels as they come out on paper: read back from the PDF's vectors, and from its raster by a reader of QR codes. */
class LabelsTest {
    private static final double DPI = 203;
    private static final double DOT = 25.4 / DPI;
    private static final String SIGNS = "CDFHJKMNPRTWXY3479";
    private static final List<String> HOSTILE = List.of(
            "Acer pseudoplatanus, the very wide boards of the old stock that nobody has looked through since the winter before"
                    + " last, quarter sawn, with the flame, upper shelf, left of the door",
            "IĞDIR CEVİZİ – ışıl ışıl şöyle böyle",
            "Żółty grab źródłowy, pięć łokci",
            "Σφένδαμος ψηλά δεξιά",
            "桐と楓の板 棚の上",
            "🪵🎸 shelf 🇹🇷 👩‍🏭",
            "a\u0000b\u0007c\td\u200Be\u202Ef",
            "\uD83E lone half",
            "Pneumonoultramicroscopicsilicovolcanoconiosisholzverbindungsschrank",
            "");

    @Test
    void everyLabelStaysInItsCellOnEverySheetANewShopHas() throws IOException {
        Random random = new Random(11);
        for (LabelSheet sheet : DefaultLabelSheets.all()) {
            int count = sheet.onPage() + 3;
            int first = 1 + random.nextInt(sheet.onPage());
            check(new Labels(labels(random, count), sheet, first, Correction.NONE));
        }
    }

    @Test
    void everyLabelStaysInItsCellOnTwoHundredRandomSheets() throws IOException {
        Random random = new Random(12);
        for (int i = 0; i < 200; i++) {
            LabelSheet sheet = randomSheet(random);
            assertThat(sheet.flaws()).isEmpty();
            List<Label> labels = labels(random, 1 + random.nextInt(sheet.onPage()));
            check(new Labels(labels, sheet, 1 + random.nextInt(sheet.onPage()), Correction.NONE));
        }
    }

    /** What the shop lets through as large enough is large enough for a short code at an address of a usual length. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void theLeastLabelThereMayBeHoldsACode(boolean lying) throws IOException {
        LabelSheet least = new LabelSheet(
                "least",
                "Least",
                LabelPaper.SINGLE,
                LabelSheet.Grid.ONE,
                lying ? LabelSheet.LEAST_WIDTH : LabelSheet.LEAST_UPRIGHT_WIDTH,
                lying ? LabelSheet.LEAST_HEIGHT : LabelSheet.LEAST_UPRIGHT_HEIGHT);
        for (String code : List.of("WMW", "K7M", "M-1")) {
            check(new Labels(
                    List.of(new Label(
                            code,
                            "Hard maple (sugar)",
                            "1640.5 × 170.5 × 122.5 mm",
                            "Shelf B2",
                            "http://192.168.1.20:8417/p/" + code)),
                    least,
                    1,
                    Correction.NONE));
        }
    }

    @Test
    void hostileNamesPrintInsideTheirLabels() throws IOException {
        for (LabelSheet sheet : DefaultLabelSheets.all()) {
            List<Label> labels = new ArrayList<>();
            for (String name : HOSTILE) {
                for (String other : List.of("", name, "Shelf B2")) {
                    labels.add(new Label("K7M", name, "640 × 70 × 22 mm", other, "http://192.168.1.20:8417/p/K7M"));
                }
            }
            Labels all = new Labels(labels, sheet, 1, Correction.NONE);
            check(all);
            assertThat(all.drawn(Integer.MAX_VALUE)).hasSize(all.pages());
        }
    }

    @Test
    void aNameTooLongForItsLabelEndsInAnEllipsisAndTheSizeIsWhole() throws IOException {
        LabelSheet small = sheet("a4-65");
        Labels one = new Labels(
                List.of(new Label("K7M", HOSTILE.get(0), "640 × 70 × 22 mm", HOSTILE.get(0), "http://shop:8417/p/K7M")),
                small,
                1,
                Correction.NONE);
        String text = text(read(one.pdf()).get(0).letters());
        assertThat(text).contains("640 × 70 × 22 mm".replace(" ", "")).contains("…");
    }

    @Test
    void aLongCodeBreaksIntoLinesWithItsCapitalsAtFullHeight() throws IOException {
        check(new Labels(
                List.of(new Label("WALNUT-WWWWW", "Walnut", "1 mm", "", "http://shop:8417/p/WALNUT-WWWWW")),
                sheet("a4-21"),
                1,
                Correction.NONE));
    }

    @Test
    void saysWhichSheetHoldsACodeThatDoesNotFit() {
        List<LabelSheet> all = DefaultLabelSheets.all();
        Labels tight = new Labels(
                List.of(new Label("WWWWWW-WWWWW", "Walnut", "1 mm", "", "http://shop:8417/p/WWWWWW-WWWWW")),
                sheet("a4-65"),
                1,
                Correction.NONE);
        assertThat(tight.faults(all)).singleElement().satisfies(e -> {
            assertThat(e.pointer()).isEqualTo("/sheet");
            assertThat(e.message())
                    .startsWith("“38.1 × 21.2 mm, 65 on A4” is too small for WWWWWW-WWWWW, with capitals 5 mm high")
                    .contains("take “99.1 × 38.1 mm, 14 on A4” or “63.5 × 38.1 mm, 21 on A4”")
                    .doesNotContain("or “38.1 × 21.2");
        });
    }

    @Test
    void refusesAPlaceTheSheetHasNotAndACorrectionThatPushesLabelsOff() {
        Labels past = new Labels(labels(new Random(1), 1), sheet("a4-21"), 22, Correction.NONE);
        assertThat(past.faults(List.of())).singleElement().satisfies(e -> {
            assertThat(e.field()).isEqualTo("first");
            assertThat(e.message()).isEqualTo("“22” is past the last label of a sheet; write 1 to 21");
        });
        Labels pushed = new Labels(labels(new Random(1), 1), sheet("single-50"), 1, new Correction(95));
        assertThat(pushed.faults(List.of()))
                .singleElement()
                .satisfies(e -> assertThat(e.field()).isEqualTo("measured"));
        assertThat(new Labels(labels(new Random(1), 1), sheet("single-50"), 1, new Correction(98.7)).faults(List.of()))
                .isEmpty();
    }

    /** A printer that prints about the middle of the page and short by 1.3 % makes of the corrected page what was meant. */
    @Test
    void aCorrectedPageIsRightOnceTheShortPrinterPrintedIt() throws IOException {
        List<Label> labels = labels(new Random(3), 21);
        LabelSheet sheet = sheet("a4-21");
        PrintedLabels plain =
                read(new Labels(labels, sheet, 1, Correction.NONE).pdf()).get(0);
        PrintedLabels corrected =
                read(new Labels(labels, sheet, 1, new Correction(98.7)).pdf()).get(0);
        assertThat(corrected.boxes()).hasSameSizeAs(plain.boxes());
        for (int i = 0; i < plain.boxes().size(); i++) {
            Rectangle2D meant = plain.boxes().get(i);
            Rectangle2D drawn = corrected.boxes().get(i);
            assertThat(105 + (drawn.getX() - 105) * 0.987).isCloseTo(meant.getX(), within(0.01));
            assertThat(148.5 + (drawn.getY() - 148.5) * 0.987).isCloseTo(meant.getY(), within(0.01));
            assertThat(drawn.getWidth() * 0.987).isCloseTo(meant.getWidth(), within(0.005));
        }
    }

    /**
     * The blot is an upright strip over the whole height of the code, 15 % of all its modules, in ink or scratched white, right of
     * the left finder patterns and left of the right one and of the alignment pattern. A strip of the same size at the right edge,
     * over part of the alignment pattern, left only about a third of such labels readable to this reader. Level Q restores about
     * a quarter of the codewords (ISO/IEC 18004), but a blot spoils every codeword it only touches. Codewords run upward and
     * downward in columns two modules wide, so that a strip along them spoils little more than its own area.
     */
    @Test
    void aThousandLabelsAreReadFromTheRasterOfALabelPrinterWithFifteenPercentBlotted() throws Exception {
        Random random = new Random(14);
        List<LabelSheet> sheets = DefaultLabelSheets.all();
        int read = 0;
        for (LabelSheet sheet : sheets) {
            read += readBack(labels(random, 1000 / sheets.size()), sheet, n -> strip(n, random), random);
        }
        assertThat(read).isEqualTo(1000);
    }

    private interface Blot {
        /** @param modules along a side */
        boolean[][] of(int modules);
    }

    /** Two columns of codewords and the beginning of a third, as codewords follow each other. */
    private static boolean[][] strip(int n, Random random) {
        boolean[][] blot = new boolean[n][n];
        int left = (int) Math.ceil(0.15 * n * n);
        int column = 6 + random.nextInt((n - 15) / 2 - 5);
        for (int c = column; left > 0; c++) {
            int right = n - 1 - 2 * c;
            assertThat(right - 1).as("clear of the left finder patterns").isGreaterThan(8);
            for (int i = 0; i < n && left > 0; i++) {
                int row = c % 2 == 0 ? n - 1 - i : i;
                blot[row][right] = true;
                blot[row][right - 1] = true;
                left -= 2;
            }
        }
        return blot;
    }

    private static int readBack(List<Label> labels, LabelSheet sheet, Blot blots, Random random) throws Exception {
        byte[] pdf = new Labels(labels, sheet, 1, Correction.NONE).pdf();
        int done = 0;
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<PrintedLabels> pages = PrintedLabels.of(document);
            PDFRenderer renderer = new PDFRenderer(document);
            for (int page = 0; page < pages.size(); page++) {
                BufferedImage raster = renderer.renderImageWithDPI(page, (float) DPI, ImageType.GRAY);
                for (int place = 0; place < sheet.onPage() && done < labels.size(); place++) {
                    Rectangle2D cell = cell(sheet, place);
                    Rectangle2D qr = union(inside(pages.get(page).boxes(), cell));
                    double module = module(inside(pages.get(page).boxes(), cell));
                    int n = (int) Math.round(qr.getWidth() / module);
                    boolean[][] blot = blots.of(n);
                    int grey = random.nextBoolean() ? 0x00 : 0xFF;
                    BufferedImage label = cut(raster, cell);
                    stain(
                            label,
                            blot,
                            new Rectangle2D.Double(qr.getX() - cell.getX(), qr.getY() - cell.getY(), module, module),
                            grey);
                    String wanted = labels.get(done).address();
                    assertThat(decoded(label))
                            .as("label %s on %s, %s modules", labels.get(done).code(), sheet.name(), n)
                            .isEqualTo(wanted);
                    done++;
                }
            }
        }
        return done;
    }

    private static BufferedImage cut(BufferedImage raster, Rectangle2D cell) {
        int x = (int) Math.round(cell.getX() / DOT);
        int y = (int) Math.round(cell.getY() / DOT);
        int w = Math.min((int) Math.round(cell.getWidth() / DOT), raster.getWidth() - x);
        int h = Math.min((int) Math.round(cell.getHeight() / DOT), raster.getHeight() - y);
        BufferedImage copy = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
        copy.getGraphics().drawImage(raster.getSubimage(x, y, w, h), 0, 0, null);
        return copy;
    }

    private static void stain(BufferedImage label, boolean[][] blot, Rectangle2D module, int grey) {
        int rgb = grey << 16 | grey << 8 | grey;
        int dots = (int) Math.round(module.getWidth() / DOT);
        for (int row = 0; row < blot.length; row++) {
            for (int column = 0; column < blot.length; column++) {
                if (blot[row][column]) {
                    int x = (int) Math.round(module.getX() / DOT) + column * dots;
                    int y = (int) Math.round(module.getY() / DOT) + row * dots;
                    for (int i = 0; i < dots * dots; i++) {
                        label.setRGB(
                                Math.min(label.getWidth() - 1, x + i % dots),
                                Math.min(label.getHeight() - 1, y + i / dots),
                                rgb);
                    }
                }
            }
        }
    }

    private static String decoded(BufferedImage image) {
        int[] pixels = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
        LuminanceSource source = new RGBLuminanceSource(image.getWidth(), image.getHeight(), pixels);
        try {
            return new QRCodeReader()
                    .decode(
                            new BinaryBitmap(new HybridBinarizer(source)),
                            Map.of(DecodeHintType.TRY_HARDER, Boolean.TRUE))
                    .getText();
        } catch (ReaderException e) {
            return "nothing: " + e.getClass().getSimpleName();
        }
    }

    /** Every letter and module lies in the cell of its own label, and every cell says what its label says. */
    private static void check(Labels labels) throws IOException {
        LabelSheet sheet = labels.sheet();
        assertThat(labels.faults(List.of(sheet))).isEmpty();
        List<PrintedLabels> pages = read(labels.pdf());
        assertThat(pages).hasSize(labels.pages());
        int next = 0;
        int lettersSeen = 0;
        int boxesSeen = 0;
        for (int page = 0; page < pages.size(); page++) {
            PrintedLabels printed = pages.get(page);
            for (int place = 0; place < sheet.onPage(); place++) {
                Rectangle2D cell = cell(sheet, place);
                List<PrintedLabels.Letter> letters = printed.letters().stream()
                        .filter(l -> !l.ink().isEmpty() && cell.contains(l.ink()))
                        .toList();
                List<Rectangle2D> boxes = inside(printed.boxes(), cell);
                lettersSeen += letters.size();
                boxesSeen += boxes.size();
                boolean used = page * sheet.onPage() + place >= labels.first() - 1
                        && next < labels.labels().size();
                if (!used) {
                    assertThat(letters).isEmpty();
                    assertThat(boxes).isEmpty();
                    continue;
                }
                Label label = labels.labels().get(next);
                next++;
                assertThat(text(letters)).startsWith(label.code());
                assertCapitals(letters, label.code());
                assertQuiet(letters, boxes, cell);
            }
        }
        assertThat(next).isEqualTo(labels.labels().size());
        // What lies in no cell or across the edge of one was not counted above.
        assertThat(lettersSeen)
                .isEqualTo(pages.stream()
                        .flatMap(p -> p.letters().stream())
                        .filter(l -> !l.ink().isEmpty())
                        .count());
        assertThat(boxesSeen)
                .isEqualTo(pages.stream().mapToInt(p -> p.boxes().size()).sum());
    }

    private static void assertCapitals(List<PrintedLabels.Letter> letters, String code) {
        for (int i = 0; i < code.length(); i++) {
            if (code.charAt(i) != '-') {
                assertThat(letters.get(i).ink().getHeight())
                        .as("height of %s in %s", code.charAt(i), code)
                        .isGreaterThanOrEqualTo(5);
            }
        }
    }

    private static void assertQuiet(List<PrintedLabels.Letter> letters, List<Rectangle2D> boxes, Rectangle2D cell) {
        Rectangle2D qr = union(boxes);
        double module = module(boxes);
        assertThat(module / DOT).as("dots of a module").isCloseTo(Math.rint(module / DOT), within(0.01));
        assertThat(module).isGreaterThan(3 * DOT - 0.001);
        assertThat(qr.getWidth()).isCloseTo(qr.getHeight(), within(0.01));
        assertThat(qr.getX() / DOT).as("left edge in dots").isCloseTo(Math.rint(qr.getX() / DOT), within(0.02));
        double quiet = 4 * module - 0.001;
        Rectangle2D white = new Rectangle2D.Double(
                qr.getX() - quiet, qr.getY() - quiet, qr.getWidth() + 2 * quiet, qr.getHeight() + 2 * quiet);
        assertThat(cell.contains(white))
                .as("quiet zone %s inside %s", white, cell)
                .isTrue();
        assertThat(letters.stream().filter(l -> l.ink().intersects(white)).toList())
                .as("letters in the quiet zone %s of %s", white, cell)
                .isEmpty();
        // No two lines of text run into each other.
        for (int i = 0; i < letters.size(); i++) {
            for (int j = i + 1; j < letters.size(); j++) {
                Rectangle2D both =
                        letters.get(i).ink().createIntersection(letters.get(j).ink());
                boolean overlap = both.getWidth() > 0.35 && both.getHeight() > 0.35;
                assertThat(overlap)
                        .as("%s over %s in %s", letters.get(i), letters.get(j), text(letters))
                        .isFalse();
            }
        }
    }

    private static List<PrintedLabels> read(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return PrintedLabels.of(document);
        }
    }

    private static Rectangle2D cell(LabelSheet sheet, int place) {
        int column = place % sheet.grid().across();
        int row = place / sheet.grid().across();
        return new Rectangle2D.Double(
                sheet.grid().left().mm() + column * sheet.grid().pitchAcross().mm(),
                sheet.grid().top().mm() + row * sheet.grid().pitchDown().mm(),
                sheet.width().mm(),
                sheet.height().mm());
    }

    private static List<Rectangle2D> inside(List<Rectangle2D> boxes, Rectangle2D cell) {
        return boxes.stream().filter(cell::contains).toList();
    }

    private static Rectangle2D union(List<Rectangle2D> boxes) {
        Rectangle2D all = new Rectangle2D.Double();
        all.setRect(boxes.get(0));
        boxes.forEach(all::add);
        return all;
    }

    private static double module(List<Rectangle2D> boxes) {
        return boxes.stream().mapToDouble(Rectangle2D::getHeight).min().orElseThrow();
    }

    private static String text(List<PrintedLabels.Letter> letters) {
        return letters.stream()
                .map(PrintedLabels.Letter::text)
                .filter(t -> !t.isBlank())
                .collect(Collectors.joining());
    }

    private static LabelSheet sheet(String code) {
        return DefaultLabelSheets.all().stream()
                .filter(s -> s.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private static List<Label> labels(Random random, int count) {
        return IntStream.range(0, count)
                .mapToObj(i -> {
                    String code = code(random);
                    return new Label(
                            code,
                            random.nextInt(3) == 0
                                    ? HOSTILE.get(random.nextInt(HOSTILE.size()))
                                    : List.of("Hard maple (sugar)", "Lamination: Black walnut / Hard maple", "Ash")
                                            .get(random.nextInt(3)),
                            List.of("640 × 70 × 22 mm", "25 13/64 × 2 3/4 × 55/64 in", "1204.5 × 131.2 × 45.5 mm")
                                    .get(random.nextInt(3)),
                            random.nextInt(4) == 0 ? "" : "Shelf B" + random.nextInt(40),
                            "http://192.168.1." + random.nextInt(256) + ":8417/p/" + code);
                })
                .toList();
    }

    private static String code(Random random) {
        String made = random.ints(3, 0, SIGNS.length())
                .mapToObj(i -> SIGNS.substring(i, i + 1))
                .collect(Collectors.joining());
        return random.nextInt(3) == 0 ? made.charAt(0) + "-" + random.nextInt(100) : made;
    }

    private static LabelSheet randomSheet(Random random) {
        while (true) {
            LabelPaper paper = List.of(LabelPaper.values()).get(random.nextInt(3));
            Length width = um(random, 24_000, 110_000);
            Length height = um(random, 17_000, 80_000);
            LabelSheet sheet = new LabelSheet(
                    "random",
                    "Random",
                    paper,
                    paper == LabelPaper.SINGLE
                            ? LabelSheet.Grid.ONE
                            : new LabelSheet.Grid(
                                    1 + random.nextInt(6),
                                    1 + random.nextInt(14),
                                    um(random, 0, 20_000),
                                    um(random, 0, 20_000),
                                    Length.ofUm(width.um() + random.nextInt(4_000)),
                                    Length.ofUm(height.um() + random.nextInt(4_000))),
                    width,
                    height);
            if (sheet.flaws().isEmpty()) {
                return sheet;
            }
        }
    }

    private static Length um(Random random, int least, int most) {
        return Length.ofUm(least + random.nextInt(most - least + 1));
    }
}
