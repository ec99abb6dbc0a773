package org.scarfwright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.print.PageSize;

/** The demo shop's week, accepted and laid: printed on one sheet, and worked through on a phone. */
class WeekIT {
    private static final String WEEK = "/week?week=2026-W49";
    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);

    /** Points to the inch, and how far off a sheet's edge may be told. */
    private static final float POINTS = 72;

    private static final float NEAR = 1;

    private static void laysTheDemoWeek(Browser browser) {
        browser.go("/");
        browser.button("Load the demo shop");
        browser.button("Match");
        browser.waitFor("/match/\\d+");
        browser.button("Accept and reserve the pieces");
        browser.go(WEEK);
        browser.button("Lay the work on days");
        assertThat(browser.text()).contains("The work is laid.");
    }

    @Test
    void printsAWeekOnOneSheetLying() throws Exception {
        try (StartedProgram program = StartedProgram.start();
                Browser browser = Browser.open(program.address())) {
            laysTheDemoWeek(browser);
            for (PageSize paper : List.of(PageSize.ISO_A4, PageSize.US_LETTER)) {
                try (PDDocument sheet = Loader.loadPDF(browser.pdfAsStyled(paper))) {
                    assertThat(sheet.getNumberOfPages()).isEqualTo(1);
                    assertThat(sheet.getPage(0).getMediaBox().getWidth() / POINTS * 2.54f)
                            .as("as long as the paper's longer side, in centimetres")
                            .isBetween((float) paper.getHeight() - NEAR / 10, (float) paper.getHeight() + NEAR / 10);
                    assertThat(new PDFTextStripper().getText(sheet))
                            .contains("Mon 30 Nov", "Fri 4 Dec", "square up", "In clamps", "machine’s manual");
                }
            }
        }
    }

    /** At 390 px and with the page's scripts off, step after step as the bench offers them, the clock going with the work. */
    @Test
    void worksTheFirstNeckToAJoinedBlankOnAPhone() {
        try (StartedProgram program = StartedProgram.start();
                Browser browser = Browser.open(program.address())) {
            browser.width(390);
            browser.scripts(false);
            laysTheDemoWeek(browser);
            program.now(at(MONDAY, 8));
            browser.go("/bench");
            String neck = browser.texts("#now .note").get(0).replaceFirst(",.*", "");

            List<String> done = new ArrayList<>();
            for (LocalDate day = MONDAY; !isJoined(done) && day.isBefore(MONDAY.plusDays(14)); day = day.plusDays(1)) {
                for (int hour = 8; hour < 17 && !isJoined(done); hour++) {
                    program.now(at(day, hour));
                    browser.go("/bench");
                    while (worksOn(browser, neck, done)) {
                        assertThat(browser.path()).isEqualTo("/bench");
                    }
                }
            }

            assertThat(done)
                    .as("every step of " + neck + ", in order, and flattening its wood may have been another neck's")
                    .contains("dry-fit, align, drill for locating screws", "glue and clamp")
                    .endsWith("unclamp, remove the screws", "square up");
            assertThat(done.indexOf("cut the bevel (neck)")).isBetween(0, done.indexOf("true the bevel face (neck)"));
            assertThat(done.indexOf("cut the bevel (head)")).isBetween(0, done.indexOf("true the bevel face (head)"));
        }
    }

    private static boolean isJoined(List<String> done) {
        return done.contains("square up");
    }

    private static Instant at(LocalDate day, int hour) {
        return day.atTime(LocalTime.of(hour, 0)).toInstant(ZoneOffset.UTC);
    }

    /** Does the neck's first step that is ready, or flattens what may be its wood; false when nothing of the kind is ready. */
    private static boolean worksOn(Browser browser, String neck, List<String> done) {
        List<String> steps = browser.texts(".steps li");
        int next = -1;
        for (int i = steps.size() - 1; i >= 0; i--) {
            boolean ready = steps.get(i).endsWith("ready");
            boolean own = steps.get(i).contains(neck);
            boolean wood = steps.get(i).startsWith("flatten")
                    && (next < 0 || !steps.get(next).contains(neck));
            next = ready && (own || wood) ? i : next;
        }
        if (next < 0) {
            return false;
        }
        boolean own = steps.get(next).contains(neck);
        browser.follow(".steps li a", next);
        assertThat(browser.overflows()).isFalse();
        String step = browser.texts("#now").get(0);
        if (step.toLowerCase(java.util.Locale.ROOT).startsWith("cut")) {
            assertThat(browser.text()).contains("Fetch", "Caution.", "Jig wedge");
        }
        browser.fill("Hands-on (min)", "12");
        browser.button("Done");
        if (own) {
            done.add(steps.get(next).replaceFirst("(?s)\\sA-\\d.*", "").strip());
        }
        return true;
    }
}
