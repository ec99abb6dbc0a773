package org.scarfwright.necks.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.shop.DemoShopRequested;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.http.HttpStatus;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Transactional;

/** What a person sees of designs and orders; the shop is the demo shop. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class NecksPagesTest {
    private static final Pattern ID = Pattern.compile(" id=\"([^\"]+)\"");

    @Autowired
    MockMvcTester mvc;

    @Autowired
    ApplicationEventPublisher events;

    @BeforeEach
    void loadTheDemoShop() {
        events.publishEvent(new DemoShopRequested());
    }

    private String page(String address, HttpStatus status) throws Exception {
        return text(mvc.get().uri(URI.create(address)).exchange(), status);
    }

    private String page(String address) throws Exception {
        return page(address, HttpStatus.OK);
    }

    private static String text(MvcTestResult result, HttpStatus status) throws Exception {
        assertThat(result).hasStatus(status);
        return result.getResponse().getContentAsString(StandardCharsets.UTF_8);
    }

    /** @param sent names and values in turn */
    private MvcTestResult send(String address, String... sent) {
        MockMvcTester.MockMvcRequestBuilder request = mvc.post().uri(address).with(csrf());
        for (int i = 0; i < sent.length; i += 2) {
            request.param(sent[i], sent[i + 1]);
        }
        return request.exchange();
    }

    @Test
    void listsTheDesignsAndFindsOne() throws Exception {
        assertThat(page("/designs")).contains("8 designs", "Withy six-string", "Hob short bass", "8 1/2 in");
        assertThat(page("/designs?q=bass"))
                .contains("1 design", "Hob short bass")
                .doesNotContain("Withy");
        assertThat(page("/designs?q=%3Cb%3Ex")).contains("No design has “&lt;b&gt;x” in its code or name.");
        assertThat(page("/designs?page=99")).contains("8 designs");
    }

    /**
     * The neck is 18 in = 457.2 mm (international inch), t 20, h 15, a 10°. By the right triangle: run t·cot a = 113.426,
     * h / sin a = 86.382, t / sin a = 115.175, h·cot a = 85.069; so underlaid 457.2 + 113.4 = 570.6 along the back and
     * 180 − 115.2 = 64.8 along the head's front; overlaid 457.2 − 86.4 = 370.8 and 484.2; glue area 86.382 × 57 = 49.2 cm².
     */
    @Test
    void showsBothArrangementsWithEveryLengthForEveryAngle() throws Exception {
        String page = page("/designs/withy-6");
        assertThat(page).contains("At 10°, a slope of 1 : 5.67", "At 13°, a slope of 1 : 4.33", "two of 9.5 mm");
        assertThat(page).contains("457.2 mm", "570.6 mm", "64.8 mm", "149.9 mm", "86.4 mm", "115.2 mm");
        assertThat(page).contains("370.8 mm", "484.2 mm", "265.1 mm", "no seam", "49.2 cm²", "+27.0 mm");
        assertThat(page)
                .contains("Underlaid scarf joint at 10°, from the side", "Overlaid scarf joint at 13°, from the side");
        assertThat(page).contains("Clamp it", "The machine’s manual, local rules");
        assertThat(ID.matcher(page).results().map((MatchResult r) -> r.group(1)))
                .hasSizeGreaterThan(10)
                .doesNotHaveDuplicates();
    }

    /**
     * As sawn at 10° from 25.4 mm stock: short side 457.2 + 3 end + 1.5 truing = 461.7, and the bevel's run through the stock
     * 25.4·cot 10° = 144.051 more: 605.8. From 20 mm stock, 113.426 more: 575.1.
     */
    @Test
    void showsWhatAThickerStockAsksFor() throws Exception {
        assertThat(page("/designs/WITHY-6")).contains("575.1 mm").doesNotContain("605.8 mm");
        assertThat(page("/designs/WITHY-6?neckStock=1%20in")).contains("605.8 mm", "value=\"1 in\"");
        assertThat(page("/designs/WITHY-6?neckStock=19.9&headStock=x", HttpStatus.UNPROCESSABLE_CONTENT))
                .contains(
                        "Neck stock at the saw is 19.9; it lies between the part’s 20 mm and 300 mm.",
                        "Head stock at the saw “x” is not a length",
                        "value=\"19.9\"",
                        "575.1 mm");
    }

    @Test
    void saysThatASeamWillShow() throws Exception {
        String form = page("/designs/SALLOW-7/edit");
        assertThat(form).contains("value=\"457 mm\"", "value=\"11\"");
        assertThat(send(
                        "/designs",
                        "code",
                        "SEAM-1",
                        "name",
                        "Seam",
                        "neckLength",
                        "457",
                        "nutWidth",
                        "43",
                        "heelWidth",
                        "57",
                        "neckThickness",
                        "20",
                        "headLength",
                        "180",
                        "headWidth",
                        "76",
                        "headThickness",
                        "15",
                        "angle",
                        "10",
                        "arrangements",
                        "underlaid",
                        "finish",
                        "clear",
                        "neckWoods",
                        "maple_sugar",
                        "neckWoods",
                        "sapele"))
                .hasStatus(HttpStatus.FOUND)
                .hasRedirectedUrl("/designs/SEAM-1");
        assertThat(page("/designs/SEAM-1"))
                .contains(
                        "Underlaid, a seam will show on the clear face, 115.2 mm from the nut at 10°.",
                        "only neck pieces at least 76.0 mm wide will do",
                        "This design allows the underlaid head only; the other is drawn for comparison.",
                        "Hard maple (sugar) or Sapele");
    }

    @Test
    void keepsWhatWasTypedAndTellsEveryErrorBesideItsField() throws Exception {
        String page = text(
                send(
                        "/designs",
                        "code",
                        "my neck",
                        "name",
                        "<b>Neck",
                        "neckLength",
                        "1,234",
                        "headThickness",
                        "25 3/8\"",
                        "neckWoods",
                        "sapele",
                        "wings",
                        "true"),
                HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(page)
                .contains("value=\"my neck\"", "value=\"&lt;b&gt;Neck\"", "value=\"1,234\"", "value=\"25 3/8&quot;\"")
                .contains("id=\"code-error\"", "id=\"neckLength-error\"", "id=\"finish-error\"")
                .contains("Neck length “1,234” can be read two ways; write 1234 or 1.234.")
                .contains("Arrangements is empty; write underlaid, overlaid or both.")
                .contains("href=\"#arrangements\"", "id=\"arrangements\"")
                .containsPattern("id=\"neckWoods-sapele\"[^>]* checked=\"checked\"")
                .containsPattern("name=\"wings\"[^>]* checked=\"checked\"");
        assertThat(page("/designs")).contains("8 designs");
    }

    @Test
    void fillsTheFormFromAnAddressAndFromAnotherDesign() throws Exception {
        assertThat(page("/designs/new?neckLength=25%203/8%20in&neckWidth=60&angle=13&arrangement=overlaid"))
                .contains("value=\"25 3/8 in\"", "value=\"60\"", "value=\"13\"")
                .containsPattern("value=\"overlaid\"[^>]* checked=\"checked\"")
                .doesNotContainPattern("value=\"underlaid\"[^>]* checked=\"checked\"");
        assertThat(page("/designs/new?from=HOB-4"))
                .contains("value=\"8 1/2 in\"", "value=\"Hob short bass\"")
                .doesNotContain("value=\"HOB-4\"");
        assertThat(page("/designs/new?from=NONE", HttpStatus.NOT_FOUND)).contains("There is no design “NONE”.");
    }

    @Test
    void doesNotOverwriteADesignThatSomebodyElseChanged() throws Exception {
        String[] sent = {
            "version", "0",
            "name", "Withy, renamed",
            "neckLength", "18 in",
            "nutWidth", "43",
            "heelWidth", "57",
            "neckThickness", "20",
            "headLength", "180",
            "headWidth", "76",
            "headThickness", "15",
            "angle", "10",
            "arrangements", "overlaid",
            "finish", "opaque"
        };
        assertThat(send("/designs/WITHY-6", sent)).hasRedirectedUrl("/designs/WITHY-6");
        String page = text(send("/designs/WITHY-6", sent), HttpStatus.CONFLICT);
        assertThat(page)
                .contains("Design WITHY-6 was changed since you opened this page; your entries are kept below.")
                .contains("value=\"Withy, renamed\"", "name=\"version\" value=\"1\"");
    }

    @Test
    void listsTheOrdersOfAWeekWithTheirTotals() throws Exception {
        String page = page("/orders?week=2026-W49");
        assertThat(page)
                .contains("Mon 30 Nov to Sun 6 Dec 2026", "12 orders, 15 necks.", "A-107", "Needed before the tour")
                .contains("/orders?week=2026-W48", "/orders?week=2026-W50", "/match?week=2026-W49");
        assertThat(page.indexOf("A-107")).isLessThan(page.indexOf("A-112"));
        assertThat(page("/orders?week=2026-W53")).contains("There is no open order for this week.");
        assertThat(page("/orders?week=2027-W53", HttpStatus.UNPROCESSABLE_CONTENT))
                .contains("The year 2027 has no week 53");
    }

    @Test
    void cancelsAnOrderAndTakesItUpAgain() throws Exception {
        assertThat(send("/orders/A-101/cancel")).hasRedirectedUrl("/orders?week=2026-W49");
        assertThat(page("/orders?week=2026-W49"))
                .contains("11 orders, 13 necks.", "These are in no plan.", "/orders/A-101/restore");
        assertThat(page("/orders/A-101")).contains("This order is cancelled").doesNotContain("id=\"quantity\"");
        assertThat(send("/orders/A-101/restore")).hasRedirectedUrl("/orders?week=2026-W49");
        assertThat(page("/orders?week=2026-W49")).contains("12 orders, 15 necks.");
    }

    @Test
    void entersAndEditsAnOrder() throws Exception {
        assertThat(page("/orders/new?design=HOB-4&week=2026-W50"))
                .containsPattern("value=\"HOB-4\"[^>]* selected=\"selected\"")
                .contains("value=\"2026-W50\"");
        assertThat(send("/orders", "code", "z-1", "design", "HOB-4", "quantity", "2", "due", "2027-01-03"))
                .hasRedirectedUrl("/orders?week=2026-W53");
        String page = text(
                send("/orders", "design", "GONE", "quantity", "many", "due", "tomorrow", "note", "keep <me>"),
                HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(page)
                .contains("value=\"many\"", "value=\"tomorrow\"", "keep &lt;me&gt;", "id=\"due-error\"")
                .contains("Design “GONE” is no design")
                .containsPattern("value=\"GONE\"[^>]* selected=\"selected\"");
        assertThat(send("/orders/Z-1", "version", "0", "design", "HOB-4", "quantity", "3", "due", "2027-01-03"))
                .hasRedirectedUrl("/orders?week=2026-W53");
        assertThat(text(
                        send("/orders/Z-1", "version", "0", "design", "HOB-4", "quantity", "4", "due", "2027-01-03"),
                        HttpStatus.CONFLICT))
                .contains("Order Z-1 was changed since you opened this page", "value=\"4\"");
        assertThat(page("/orders/NONE", HttpStatus.NOT_FOUND)).contains("There is no order “NONE”.");
    }

    @Test
    void readsAPastedFileBeforeItEntersIt() throws Exception {
        String file = "design,quantity,due,note\nHOB-4,2,2026-12-09,first\nHOB-5,0,soon,second\n";
        assertThat(text(send("/orders/import", "csv", file, "act", "read"), HttpStatus.OK))
                .contains("Row 3, design “HOB-5” is no design; did you mean HOB-4?")
                .doesNotContain("value=\"enter\"");
        assertThat(text(send("/orders/import", "csv", file, "act", "enter"), HttpStatus.UNPROCESSABLE_CONTENT))
                .contains("1 order new, 0 orders there already, 1 order not right yet.")
                .contains("Row 3, design “HOB-5” is no design; did you mean HOB-4?", "HOB-5,0,soon,second")
                .doesNotContain("value=\"enter\"");
        String good = file.replace("HOB-5,0,soon", "HOB-4,1,2026-12-10");
        assertThat(text(send("/orders/import", "csv", good, "act", "read"), HttpStatus.OK))
                .contains("2 orders new", "Enter 2 orders", "2 × HOB-4, due 2026-12-09");
        assertThat(page("/orders?week=2026-W50")).contains("There is no open order for this week.");
        assertThat(send("/orders/import", "csv", good, "act", "enter")).hasRedirectedUrl("/orders");
        assertThat(page("/orders?week=2026-W50")).contains("2 orders, 3 necks.");
        assertThat(text(send("/orders/import", "csv", good, "act", "read"), HttpStatus.OK))
                .contains("0 orders new, 2 orders there already");
    }

    @Test
    void readsAnUploadedFileOfDesigns() throws Exception {
        byte[] demo = NecksPagesTest.class
                .getResourceAsStream("/demo-data/designs.csv")
                .readAllBytes();
        String page = text(upload("/designs/import", demo), HttpStatus.OK);
        assertThat(page).contains("0 designs new, 8 designs there already", "WITHY-6,Withy six-string,18 in");
        assertThat(text(upload("/designs/import", new byte[] {(byte) 0xE9, 'x'}), HttpStatus.UNPROCESSABLE_CONTENT))
                .contains("File is not UTF-8: line 1");
        assertThat(text(upload("/designs/import", new byte[0]), HttpStatus.UNPROCESSABLE_CONTENT))
                .contains("File is empty; its first row names the columns: code, name");
    }

    private MvcTestResult upload(String address, byte[] content) {
        return mvc.post()
                .uri(address)
                .multipart()
                .file("file", content)
                .param("act", "read")
                .with(csrf())
                .exchange();
    }
}
