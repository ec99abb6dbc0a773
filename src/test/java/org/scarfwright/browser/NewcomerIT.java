package org.scarfwright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.print.PageSize;

/**
 * A newcomer's first hour: begin with the demo shop, put wood on the rack, enter a design and an order, match the week, accept
 * and undo, print. Once on a phone with the page's scripts off, once on a laptop.
 */
class NewcomerIT {
    private static final Instant MONDAY_OF_THE_WEEK = Instant.parse("2026-11-30T09:00:00Z");

    private static final int[] WIDTHS = {390, 820, 1280};

    /** How many pages of one kind (piece, design, order, plan …) are looked at. */
    private static final int OF_A_KIND = 1;

    private static final String WITH_ERRORS = """
            code,wood,length,width,thickness,unit,moisture,bow
            NEW-1,maple_sugar,25 3/8,3 1/4,1,in,8,
            NEW-2,mapel,640,70,22,mm,8,
            NEW-3,walnut_black,640 cm 3,70,22,mm,8,2
            """;

    private static final String MENDED = """
            code,wood,length,width,thickness,unit,moisture,bow
            NEW-1,maple_sugar,25 3/8,3 1/4,1,in,8,
            NEW-2,maple_sugar,640,70,22,mm,8,
            NEW-3,walnut_black,640,70,22,mm,8,2
            """;

    @ParameterizedTest(name = "{0} px, scripts {1}")
    @CsvSource({"390, false", "1280, true"})
    void getsFromAnEmptyShopToAPrintedPlan(int width, boolean scripts) {
        try (StartedProgram program = StartedProgram.start();
                Browser browser = Browser.open(program.address())) {
            browser.width(width);
            browser.scripts(scripts);

            loadsTheDemoShop(browser);
            importsARackFile(browser);
            addsAPieceByHand(browser);
            entersADesign(browser);
            entersAnOrder(browser);
            String plan = matchesTheWeek(browser);
            acceptsAndUndoes(browser, plan);
            printsThePlan(browser, plan);
        }
    }

    @Test
    void keepsEveryPageUsableForEverybodyAtEveryWidthAndInBothSchemes() {
        try (StartedProgram program = StartedProgram.start();
                Browser browser = Browser.open(program.address())) {
            List<String> wrong = new ArrayList<>();
            browser.go("/");
            look(browser, wrong);
            loadsTheDemoShop(browser);
            // A second plan gives the first one something to be compared with.
            String first = matchesTheWeek(browser);
            browser.button("Match again");
            browser.waitFor("/match/(?!" + first.replaceFirst(".*/", "") + "$)\\d+");
            // What only a plan that is not accepted yet links to.
            String second = browser.path();
            browser.go(second + "/lock");
            assertThat(browser.count("form")).isPositive();
            look(browser, wrong);
            browser.go(second);
            // Accepted and laid, it fills the week, the bench and the sheets.
            browser.button("Accept and reserve the pieces");
            browser.go("/week?week=2026-W49");
            browser.button("Lay the work on days");
            program.now(MONDAY_OF_THE_WEEK);
            // A cut gives the yield its figures.
            browser.go(second);
            String piece = browser.links().stream()
                    .filter(link -> link.matches("/rack/[A-Z]-\\d+"))
                    .findFirst()
                    .orElseThrow();
            browser.go(piece + "/cut");
            browser.button("Record the cut");
            List<String> madeOfIt = browser.links().stream()
                    .filter(link -> link.startsWith("/ledger/necks/"))
                    .toList();
            browser.go("/rack/import");
            browser.fill("Or its text", WITH_ERRORS);
            browser.button("Look at it first");
            look(browser, wrong);

            Set<String> seen = new LinkedHashSet<>();
            Map<String, Integer> kinds = new HashMap<>();
            Deque<String> waiting = new ArrayDeque<>(List.of("/", "/nothing-here"));
            waiting.addAll(madeOfIt);
            while (!waiting.isEmpty()) {
                String path = waiting.poll();
                if (!seen.add(path) || kinds.merge(kind(path), 1, Integer::sum) > OF_A_KIND) {
                    continue;
                }
                browser.go(path);
                look(browser, wrong);
                browser.links().stream()
                        .filter(link -> !link.startsWith("/api/")
                                && !link.startsWith("/week/calendar")
                                && !link.matches("[^?]*\\.(pdf|csv|zip)(\\?.*)?"))
                        .forEach(waiting::add);
            }
            assertThat(kinds.keySet())
                    .as("kinds of pages reached by links")
                    .contains(
                            "/",
                            "/rack",
                            "/rack/…",
                            "/rack/new",
                            "/designs",
                            "/designs/…",
                            "/orders",
                            "/orders/…",
                            "/match",
                            "/match/…",
                            "/match/…/print",
                            "/match/…/near-equal",
                            "/match/…/necks/…",
                            "/match/compare",
                            "/week",
                            "/week/steps/…",
                            "/week/glues",
                            "/match/…/sheets",
                            "/bench",
                            "/bench/…",
                            "/joint",
                            "/science",
                            "/wood",
                            "/wood/…",
                            "/wood/air",
                            "/wood/seam",
                            "/wood/slope",
                            "/wood/new",
                            "/ledger",
                            "/ledger/…",
                            "/ledger/necks/…",
                            "/ledger/check",
                            "/yield",
                            "/yield/rows",
                            "/yield/necks",
                            "/yield/offcuts",
                            "/yield/age",
                            "/yield/readings",
                            "/yield/flow",
                            "/short",
                            "/rack/…/cut",
                            "/rack/…/away",
                            "/ledger/tree/…",
                            "/shop",
                            "/shop/file",
                            "/shop/workshop",
                            "/shop/glues/…",
                            "/shop/glues/new",
                            "/shop/label-sheets",
                            "/shop/label-sheets/…",
                            "/shop/label-sheets/new",
                            "/p",
                            "/labels",
                            "/labels/print");
            assertThat(wrong).isEmpty();
        }
    }

    /** Codes and numbers become …, so that a hundred pieces count as one kind of page. */
    private static String kind(String path) {
        String bare = path.replaceFirst("\\?.*", "")
                .replaceFirst("^/ledger/tree/.*", "/ledger/tree/…")
                .replaceFirst("/necks/.*", "/necks/…");
        return bare.replaceFirst(
                "^/(rack|designs|orders|match|wood|bench|ledger|shop/saws|shop/glues|shop/label-sheets|week/steps)/"
                        + "(?!new$|import$|compare$|air$|seam$|slope$|check$|tree/|necks/)[^/]+",
                "/$1/…");
    }

    private static void look(Browser browser, List<String> wrong) {
        for (boolean dark : new boolean[] {false, true}) {
            browser.dark(dark);
            // What is laid out differently at another width is not coloured differently: dark is looked at once.
            for (int width : dark ? new int[] {WIDTHS[0]} : WIDTHS) {
                browser.width(width);
                String where = browser.path() + " at " + width + " px" + (dark ? ", dark: " : ", light: ");
                if (browser.overflows()) {
                    wrong.add(where + "scrolls sideways");
                }
                browser.violations().forEach(v -> wrong.add(where + v));
            }
        }
    }

    private static void loadsTheDemoShop(Browser browser) {
        browser.go("/");
        assertThat(browser.path()).isEqualTo("/start");
        browser.button("Load the demo shop");
        assertThat(browser.path()).isEqualTo("/");
        assertThat(browser.heading()).isEqualTo("Today, Wed 25 Nov 2026");
        assertThat(browser.text()).contains("Next: match 2026-W49").contains("15 necks wait for wood");
    }

    private static void importsARackFile(Browser browser) {
        browser.go("/rack");
        int before = total(browser);
        browser.link("Import a rack file");
        browser.upload("Rack file", "rack.csv", WITH_ERRORS);
        browser.button("Save it");
        assertThat(browser.heading()).isEqualTo("Import a rack file");
        assertThat(browser.text())
                .as("both bad rows are named, with the cell and what would be right")
                .contains("mapel")
                .contains("640 cm 3")
                .contains("Row 3")
                .contains("Row 4");
        assertThat(browser.value("Or its text")).as("nothing typed is lost").contains("640 cm 3");
        browser.go("/rack");
        assertThat(total(browser)).as("nothing is saved by halves").isEqualTo(before);

        browser.link("Import a rack file");
        browser.fill("Or its text", MENDED);
        browser.button("Look at it first");
        assertThat(browser.text()).contains("3 new pieces");
        browser.button("Save it");
        assertThat(browser.path()).isEqualTo("/rack");
        assertThat(browser.text()).contains("3 pieces are new on the rack.");
        assertThat(total(browser)).isEqualTo(before + 3);

        browser.link("Import a rack file");
        browser.fill("Or its text", MENDED);
        browser.button("Save it");
        browser.go("/rack");
        assertThat(total(browser)).as("the same file again adds nothing").isEqualTo(before + 3);
    }

    private static int total(Browser browser) {
        String text = browser.text();
        int end = text.indexOf(" pieces. All strips");
        assertThat(end).as("the list says how many pieces there are").isPositive();
        int start = end;
        while (start > 0 && Character.isDigit(text.charAt(start - 1))) {
            start--;
        }
        return Integer.parseInt(text.substring(start, end));
    }

    private static void addsAPieceByHand(Browser browser) {
        browser.go("/rack");
        browser.link("Add a piece");
        browser.choose("Wood", "Black cherry");
        browser.fill("Length (mm)", "25 38");
        browser.fill("Width (mm)", "70");
        browser.fill("Thickness (mm)", "22");
        browser.button("Put it on the rack");
        assertThat(browser.heading()).isEqualTo("Add a piece");
        assertThat(browser.value("Length (mm)")).as("kept as typed").isEqualTo("25 38");
        assertThat(browser.count(".summary a[href='#length']")).isEqualTo(1);
        browser.fill("Length (mm)", "25 3/8 in");
        browser.button("Put it on the rack");
        assertThat(browser.heading()).startsWith("Piece ");
        assertThat(browser.text()).contains("25 3/8 in").contains("Black cherry");
        assertThat(browser.count("svg[role=img]")).isPositive();
    }

    private static void entersADesign(Browser browser) {
        browser.go("/designs");
        browser.link("Enter a design");
        browser.fill("Code", "SEDGE-5");
        browser.fill("Name", "Sedge five-string");
        browser.fill("Neck length (mm)", "457");
        browser.fill("Width at the nut (mm)", "45");
        browser.fill("Width at the heel (mm)", "60");
        browser.fill("Neck thickness (mm)", "20");
        browser.fill("Head length (mm)", "180");
        browser.fill("Head width (mm)", "78");
        browser.fill("Head thickness (mm)", "15");
        browser.fill("Tilt angle (°)", "90");
        browser.button("Enter the design");
        assertThat(browser.heading()).isEqualTo("Enter a design");
        assertThat(browser.count("#angle[aria-invalid=true]")).isEqualTo(1);
        browser.fill("Tilt angle (°)", "10");
        browser.tick("underlaid");
        browser.tick("overlaid");
        browser.choose("Finish of the head’s front", "clear: the wood and every seam show");
        browser.button("Enter the design");
        assertThat(browser.heading()).isEqualTo("Sedge five-string");
        // N 457, H 180, t 20, h 15, a 10°: neck front and back underlaid, and overlaid, from the plane geometry of the
        // joint.
        assertThat(browser.text())
                .contains("Underlaid head")
                .contains("Overlaid head")
                .contains("457.0", "570.4")
                .contains("370.6", "484.0");
        assertThat(browser.count("figure.drawing svg[role=img]"))
                .as("both ways drawn")
                .isGreaterThanOrEqualTo(2);
    }

    private static void entersAnOrder(Browser browser) {
        browser.link("Order necks");
        browser.fill("Quantity (necks)", "1");
        browser.fill("Due", "2026-12-04");
        browser.fill("Code", "B-201");
        browser.button("Enter the order");
        assertThat(browser.path()).startsWith("/orders");
        assertThat(browser.text()).contains("B-201");
    }

    /** The path of the plan. */
    private static String matchesTheWeek(Browser browser) {
        browser.go("/");
        browser.button("Match");
        // A search that takes longer shows its progress first and leads to the plan by itself.
        browser.waitFor("/match/\\d+");
        assertThat(browser.text())
                .contains("Which wood for which neck")
                .contains("Not filled from this rack")
                .contains("What came closest")
                .contains("The books close")
                .contains("At the saw.");
        assertThat(browser.count("#necks svg[role=img]")).as("side views").isPositive();
        assertThat(browser.count("#pieces svg[role=img]")).as("layouts").isPositive();
        assertThat(browser.count("#necks .reasons li")).as("reasons").isPositive();
        return browser.path();
    }

    private static void acceptsAndUndoes(Browser browser, String plan) {
        browser.button("Accept and reserve the pieces");
        assertThat(browser.path()).isEqualTo(plan);
        assertThat(browser.text()).contains("Accepted.").contains("reserved for this plan");
        browser.go("/");
        assertThat(browser.text()).doesNotContain(" 0 pieces reserved");
        browser.go(plan);
        browser.button("Undo: free the pieces again");
        assertThat(browser.text()).contains("Every piece this plan held is free again.");
        browser.go("/");
        assertThat(browser.text()).contains("0 pieces reserved");
    }

    private static void printsThePlan(Browser browser, String plan) {
        browser.go(plan);
        browser.link("Sheet to print");
        assertThat(browser.path()).isEqualTo(plan + "/print");
        assertThat(browser.text()).contains("Pieces to take from the rack").contains("At the saw.");
        for (PageSize paper : List.of(PageSize.ISO_A4, PageSize.US_LETTER)) {
            byte[] pdf = browser.pdf(paper);
            assertThat(new String(pdf, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
            assertThat(pdf.length).isGreaterThan(20_000);
        }
    }
}
