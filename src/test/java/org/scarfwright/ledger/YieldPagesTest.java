package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plans;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.RackImport;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.annotation.Transactional;

/** The yield on its page, as CSV and as JSON, from a plan that was cut. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class YieldPagesTest {
    private static final IsoWeek WEEK = new IsoWeek(2026, 49);

    @Autowired
    MockMvcTester mvc;

    @Autowired
    RackImport rackImport;

    @Autowired
    Rack rack;

    @Autowired
    Plans plans;

    @Autowired
    CutRecording recording;

    @Autowired
    Losses losses;

    @Autowired
    JdbcClient jdbc;

    /** One neck from one blank, which was set aside as warped but is allowed as a neck. */
    private Plan cutOne(boolean setAside, String who) {
        String yes = setAside ? "yes" : "no";
        String file = """
                code,wood,length,width,thickness,unit,place,cost,lot,set_aside,neck_allowed
                N1,maple_sugar,900,90,25,mm,bay 3,30.00,L-7,%s,%s
                """.formatted(yes, yes);
        rackImport.save(file.getBytes(StandardCharsets.UTF_8));
        create("/api/designs", """
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true}""");
        create("/api/orders", """
                {"code": "O-1", "design": "D-1", "quantity": 1, "due": "2026-12-04", "week": "2026-W49"}""");
        Plan plan = plans.accept(plans.make(WEEK).id());
        recording.record("N1", rack.find("N1").orElseThrow().version(), List.of(), Map.of("who", who));
        return plan;
    }

    private void create(String path, String json) {
        assertThat(mvc.post().uri(path).contentType(MediaType.APPLICATION_JSON).content(json))
                .hasStatus(HttpStatus.CREATED);
    }

    @Test
    void anEmptyShopIsToldWhereFiguresComeFrom() {
        assertThat(mvc.get().uri("/yield"))
                .hasStatusOk()
                .bodyText()
                .contains("No cut is recorded yet.", "href=\"/bench\"")
                .doesNotContain("<svg role=\"img\"");
        assertThat(mvc.get().uri("/api/yield"))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.lines")
                .asArray()
                .isEmpty();
        assertThat(mvc.get().uri("/yield/rows")).hasStatusOk().bodyText().contains("There is no such row.");
    }

    /** All parts come from the one piece that was set aside: the rescue is the whole of them. */
    @Test
    void aPieceThatWasSetAsideIsARescueAndAnOrdinaryOneIsNot() {
        cutOne(true, "Ada");
        assertThat(mvc.get().uri("/api/yield"))
                .bodyJson()
                .extractingPath("$.total.rescue")
                .asNumber()
                .satisfies(n -> assertThat(n.doubleValue()).isEqualTo(1));
    }

    @Test
    void whatWasCutIsOnThePageWithItsDrawingsAndLinks() {
        cutOne(false, "Ada");
        assertThat(mvc.get().uri("/yield?by=design"))
                .hasStatusOk()
                .bodyText()
                .contains(
                        "By design",
                        "to the last cubic micrometre",
                        "Where the wood went",
                        "Of 1 cut 0 wasted more than planned, 0 less, and 1 exactly that.",
                        "/yield/rows?by=design&amp;what=kerf&amp;key=D-1",
                        "/science#net-yield")
                .doesNotContain("do not close");
        assertThat(mvc.get().uri("/api/yield?by=design"))
                .bodyJson()
                .extractingPath("$.total.rescue")
                .asNumber()
                .satisfies(n -> assertThat(n.doubleValue()).isZero());
        assertThat(mvc.get().uri("/yield/rows?by=design&what=kerf&key=D-1"))
                .hasStatusOk()
                .bodyText()
                .contains("Saw kerf", "design: D-1", "/rack/N1", "/ledger/");
        assertThat(mvc.get().uri("/api/yield/rows?by=design&what=input&key=D-1"))
                .hasStatusOk()
                .bodyJson()
                // 900 mm × 90 mm × 25 mm
                .extractingPath("$.sumMm3")
                .asNumber()
                .satisfies(n -> assertThat(n.doubleValue()).isEqualTo(2_025_000));
    }

    /** Where a figure leads, as the page writes it. */
    private List<String> addresses(String page, String label) {
        Matcher m = Pattern.compile("href=\"([^\"]+)\" aria-label=\"" + Pattern.quote(label))
                .matcher(body(page));
        List<String> found = new ArrayList<>();
        while (m.find()) {
            found.add(m.group(1).replace("&amp;", "&"));
        }
        assertThat(found).as(label + " on " + page).isNotEmpty();
        return found;
    }

    private String body(String address) {
        return new String(
                mvc.get()
                        .uri(URI.create(address))
                        .exchange()
                        .getMvcResult()
                        .getResponse()
                        .getContentAsByteArray(),
                StandardCharsets.UTF_8);
    }

    /** 900 × 90 × 25 mm are cut as planned: what was planned, what was, and nothing more. */
    @Test
    void figuresBesideThePlanOpenTheirRows() throws Exception {
        cutOne(false, "Ada");
        for (String figure : List.of("Parts as sawn", "Waste and unexplained")) {
            BigDecimal byDatabase = jdbc.sql("select sum(planned_um3) / 1000000000 from outcome where kind = :kind")
                    .param("kind", figure.startsWith("Parts") ? "PART" : "WASTE")
                    .query(BigDecimal.class)
                    .single();
            for (String column : List.of("planned", "really", "more")) {
                for (String line : List.of("D-1", "all")) {
                    String address = addresses("/yield?by=design", figure + ", " + column + ", " + line + ":")
                            .get(0);
                    assertThat(address)
                            .startsWith("/yield/rows?by=design&what=")
                            .contains("&beside=plan");
                    assertThat(body(address))
                            .contains(
                                    "beside the plan", "; the plan said ", "a difference of <strong>0.0 cm³</strong>");
                    assertThat(mvc.get().uri(URI.create("/api" + address)))
                            .hasStatusOk()
                            .bodyJson()
                            .extractingPath("$.plannedSumMm3")
                            .asNumber()
                            .satisfies(n ->
                                    assertThat(new BigDecimal(n.toString())).isEqualByComparingTo(byDatabase));
                    assertThat(body(address.replace("/yield/rows?", "/yield/rows.csv?")))
                            .startsWith("entry,at,who,piece,became,of,volume_mm3,counted_mm3,planned_mm3\r\n");
                }
            }
        }
        String dot = addresses("/yield", "Waste really, Entry ").get(0);
        assertThat(dot).matches("/yield/rows\\?what=waste&entry=\\d+");
        assertThat(body("/yield"))
                .contains("<a tabindex=\"-1\" href=\"" + dot.replace("&", "&amp;") + "\"><path class=\"d-dot\"");
        assertThat(body(dot)).contains("Waste and unexplained", ">entry ", "; the plan said ");
        assertThat(mvc.get().uri("/yield/rows?beside=rack&entry=first"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains(
                        "Beside is nothing rows can stand beside; write plan, or leave it out.",
                        "Entry is no number of an entry; write for example 57.");
    }

    /** The piece cost 30.00, all of it the neck's whose parts are all that came of it. */
    @Test
    void costsOfNecksOpenTheNecks() {
        cutOne(false, "Ada");
        long cents = jdbc.sql("select sum(cost_cents) from outcome where design_code = 'D-1'")
                .query(Long.class)
                .single();
        String cost = BigDecimal.valueOf(cents, 2).toPlainString();
        for (String figure : List.of("Necks", "Mean", "Least", "Most")) {
            String address = addresses("/yield", figure + ", D-1:").get(0);
            assertThat(address).startsWith("/yield/necks?design=D-1&cost=known");
            assertThat(body(address)).contains("O-1 no. 1", ">" + cost + "<", "on the mean <strong>" + cost, "/O-1/1");
            assertThat(body(address.replace("/yield/necks?", "/yield/necks.csv?")))
                    .startsWith("plan,order,number,design,cut_on,cost\r\n")
                    .endsWith("," + cost + "\r\n");
            assertThat(mvc.get().uri(URI.create("/api" + address)))
                    .bodyJson()
                    .extractingPath("$.sum")
                    .asNumber()
                    .satisfies(n -> assertThat(new BigDecimal(n.toString())).isEqualByComparingTo(cost));
        }
        assertThat(body(addresses("/yield", "Necks of unknown cost, D-1:").get(0)))
                .contains("There is no such neck.");
        assertThat(mvc.get().uri("/yield/necks?cost=low&first=best&from=soon"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains(
                        "Cost is none of all, known, unknown.",
                        "First is none of newest, least, most.",
                        "From is not a day");
        assertThat(mvc.get().uri("/api/yield/necks?size=0")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @Test
    void aNameThatCouldBeAFormulaIsNoneInTheCsv() {
        cutOne(false, "=1+1");
        assertThat(mvc.get().uri("/yield.csv?by=person"))
                .hasStatusOk()
                .hasHeader("Content-Disposition", "attachment; filename=\"yield.csv\"")
                .bodyText()
                .startsWith("by,key,title,parts_mm3,")
                .contains("person,'=1+1,'=1+1,");
        assertThat(mvc.get().uri("/yield/rows.csv?what=parts"))
                .hasStatusOk()
                .bodyText()
                .contains(",'=1+1,N1,parts,");
    }

    /** 900 × 90 × 25 mm came, 2025 cm³; what became of it adds up. */
    @Test
    void allWoodIsFollowedFromTheRackOn() {
        assertThat(mvc.get().uri("/yield/flow")).hasStatusOk().bodyText().contains("No wood has come to the rack yet.");
        cutOne(false, "Ada");
        assertThat(mvc.get().uri("/yield/flow"))
                .hasStatusOk()
                .bodyText()
                .contains(
                        "Of 2.0 litres that came to the rack, ",
                        "Shares of 2025.0 cm³ that add up to 100.00 %",
                        "/yield/rows?by=month&amp;what=parts",
                        "<svg");
        assertThat(mvc.get().uri("/yield/flow.csv"))
                .hasHeader("Content-Disposition", "attachment; filename=\"wood-flow.csv\"")
                .bodyText()
                .startsWith("fate,title,volume_mm3,percent\r\nnecks,Parts of necks,");
        assertThat(mvc.get().uri("/api/yield/flow"))
                .bodyJson()
                .extractingPath("$.cameMm3")
                .asNumber()
                .satisfies(n -> assertThat(n.doubleValue()).isEqualTo(2_025_000));
    }

    /** Another sheet than the yield's: places are the text of it that people enter. */
    @Test
    void theAgeOfTheRackGoesAlongAsCsv() {
        rackImport.save("code,wood,length,width,thickness,place\nAGE-1,sapele,500,60,20,=2+2\n"
                .getBytes(StandardCharsets.UTF_8));
        assertThat(mvc.get().uri("/yield/age.csv"))
                .hasStatusOk()
                .hasHeader("Content-Disposition", "attachment; filename=\"rack-age.csv\"")
                .bodyText()
                .startsWith("months,came_from,came_until,pieces,volume_mm3\r\n0,")
                .hasLineCount(7);
        assertThat(mvc.get().uri("/yield/age.csv?months=0"))
                .hasStatusOk()
                .bodyText()
                .startsWith("code,length_mm,width_mm,thickness_mm,since,lot,place\r\n")
                .contains("AGE-1,500.000,60.000,20.000,", ",,'=2+2\r\n");
        assertThat(mvc.get().uri("/yield/age.csv?months=5"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("is no age the report has; write one of 0, 1, 3, 6, 12, 24");
    }

    @Test
    void badQuestionsAreRefusedWithWhatWouldBeRight() {
        assertThat(mvc.get().uri("/yield?by=colour&from=soon&to=2026-02-30"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains(
                        "By is none of week, month, wood, lot, design, person.",
                        "From is not a day; write for example 2026-11-30.",
                        "To is not a day; write for example 2026-11-30.",
                        "value=\"soon\"");
        assertThat(mvc.get().uri("/api/yield?from=2026-12-04&to=2026-12-03"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("/to", "is before the first day, 2026-12-04");
        assertThat(mvc.get().uri("/api/yield/rows?what=sawdust&size=9999"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("/what");
        assertThat(mvc.get().uri("/api/yield/rows?size=9999"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("/size");
        assertThat(mvc.get().uri("/yield.csv?from=soon")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    }

    /** Sixty pieces in lots of their own: the second page of all rows is of all lines too, and not of the one without a name. */
    @Test
    void theNextPageOfAllRowsHasTheOthers() {
        StringBuilder file = new StringBuilder("code,wood,length,width,thickness,unit,lot\n");
        for (int i = 10; i < 70; i++) {
            file.append("P-")
                    .append(i)
                    .append(",sapele,640,70,22,mm,lot ")
                    .append(i)
                    .append('\n');
        }
        rackImport.save(file.toString().getBytes(StandardCharsets.UTF_8));
        for (int i = 10; i < 70; i++) {
            losses.remove(List.of(new Rack.PieceStamp("P-" + i, 0)), PieceState.SCRAPPED, "Kit", "It split.");
        }
        Matcher next = Pattern.compile("rel=\"next\" href=\"([^\"]+)\"").matcher(body("/yield/rows?by=lot&what=input"));
        assertThat(next.find()).isTrue();
        assertThat(body(next.group(1).replace("&amp;", "&"))).contains("Page 2 of 2", "/rack/P-10", "/rack/P-19");
    }

    /** Thirty lots, of which a page shows twenty-five; the sums are of all. */
    @Test
    void manyLinesComeOnPages() {
        StringBuilder file = new StringBuilder("code,wood,length,width,thickness,unit,lot\n");
        for (int i = 10; i < 40; i++) {
            file.append("P-")
                    .append(i)
                    .append(",sapele,640,70,22,mm,lot ")
                    .append(i)
                    .append('\n');
        }
        rackImport.save(file.toString().getBytes(StandardCharsets.UTF_8));
        for (int i = 10; i < 40; i++) {
            losses.remove(List.of(new Rack.PieceStamp("P-" + i, 0)), PieceState.SCRAPPED, "Kit", "It split.");
        }
        assertThat(mvc.get().uri("/yield?by=lot"))
                .hasStatusOk()
                .bodyText()
                .contains("Lines 1 to 25 of 30; the sums are of all.", ">lot 34<", "29568", "lines=2")
                .doesNotContain(">lot 35<", "Earlier lines");
        assertThat(mvc.get().uri("/yield?by=lot&lines=2"))
                .hasStatusOk()
                .bodyText()
                .contains("Lines 26 to 30 of 30", ">lot 35<", "Earlier lines", "29568")
                .doesNotContain(">lot 34<", "Next lines");
        assertThat(mvc.get().uri("/yield?by=lot&lines=99"))
                .hasStatusOk()
                .bodyText()
                .contains("Lines 26 to 30 of 30");
        assertThat(mvc.get().uri("/yield.csv?by=lot")).hasStatusOk().bodyText().contains("lot 10", "lot 39");
    }
}
