package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.rack.Cutting;
import org.scarfwright.rack.Doing;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.annotation.Transactional;

/** Which rests nobody wanted, and that scrapping them is one act that can be taken back. */
@Transactional
@SuppressWarnings("NullAway.Init")
abstract class OffcutsContract {
    @Autowired
    MockMvcTester mvc;

    @Autowired
    Offcuts offcuts;

    @Autowired
    Ledger ledger;

    @Autowired
    Pieces pieces;

    @Autowired
    Rack rack;

    @Autowired
    Cutting cutting;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private static Cutting.Rest rest(String code) {
        return new Cutting.Rest(new Cutting.Size(mm("200"), mm("70"), mm("22")), code, null, null, "", null);
    }

    private static TypedLength mm(String mm) {
        return TypedLength.parse(mm, LengthUnit.MM);
    }

    /** Three rests of one piece: OF-1 and OF-2 came seven months ago, OF-3 today; the piece beside them is no rest. */
    private void rests() {
        Piece piece = pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, "OF-0")
                        .put(PieceField.WOOD, "maple_sugar")
                        .put(PieceField.LENGTH, "610")
                        .put(PieceField.WIDTH, "70")
                        .put(PieceField.THICKNESS, "22"),
                LengthUnit.MM);
        pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, "OF-9")
                        .put(PieceField.WOOD, "maple_sugar")
                        .put(PieceField.LENGTH, "100")
                        .put(PieceField.WIDTH, "70")
                        .put(PieceField.THICKNESS, "22"),
                LengthUnit.MM);
        cutting.cut(new Cutting.Cut(
                piece,
                Optional.empty(),
                List.of(rest("OF-1"), rest("OF-2"), rest("OF-3")),
                List.of(),
                Doing.of(PieceChanged.Kind.CUT, "Kit", "")));
        came("OF-1", 7);
        came("OF-2", 7);
        came("OF-9", 7);
    }

    /** The clock of these tests is the machine's, so the day is set afterwards. */
    private void came(String code, int monthsAgo) {
        jdbc.sql("update piece set since = :since where code = :code")
                .param("since", LocalDate.now(clock).minusMonths(monthsAgo))
                .param("code", code)
                .update();
    }

    private List<String> unwanted(int months) {
        return offcuts.unwanted(months).stream().map(Piece::code).toList();
    }

    @Test
    void onlyOldRestsThatNoPlanEverTook() {
        rests();
        assertThat(unwanted(6)).containsExactly("OF-1", "OF-2");
        assertThat(unwanted(7)).containsExactly("OF-1", "OF-2");
        assertThat(unwanted(8)).isEmpty();
        assertThat(unwanted(0)).containsExactly("OF-1", "OF-2", "OF-3");
        rack.reserve(
                852,
                List.of(new Rack.PieceStamp(
                        "OF-2", rack.find("OF-2").orElseThrow().version())));
        assertThat(unwanted(6)).containsExactly("OF-1");
        rack.release(852);
        assertThat(unwanted(6)).as("a plan took it once").containsExactly("OF-1");
    }

    @Test
    void theyAreScrappedAsOneActAndComeBackAsOne() {
        rests();
        assertThat(mvc.get().uri("/yield/offcuts"))
                .hasStatusOk()
                .bodyText()
                // 2 · 20 cm · 7 cm · 2.2 cm
                .contains("2 rests, together 616.0 cm³", "OF-1", "OF-2")
                .doesNotContain("OF-3");
        String[] stamps = offcuts.unwanted(6).stream()
                .map(p -> p.code() + " " + p.version())
                .toArray(String[]::new);
        assertThat(mvc.post()
                        .uri("/yield/offcuts")
                        .with(SecurityMockMvcRequestPostProcessors.csrf())
                        .param("piece", stamps)
                        .param("why", ""))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("Why is empty");
        assertThat(rack.find("OF-1").orElseThrow().state()).isEqualTo(PieceState.ON_RACK);

        assertThat(mvc.post()
                        .uri("/yield/offcuts")
                        .with(SecurityMockMvcRequestPostProcessors.csrf())
                        .param("piece", stamps)
                        .param("who", "Kit")
                        .param("why", "Nobody wants them."))
                .hasStatus(HttpStatus.FOUND);
        Entry entry =
                ledger.entry(ledger.newest("OF-1", 1).acts().get(0).entry()).orElseThrow();
        assertThat(entry.acts()).extracting(Act::pieceCode).containsExactly("OF-1", "OF-2");
        assertThat(unwanted(0)).containsExactly("OF-3");
        ledger.undo(entry.id(), "Kit", "They are wanted after all.");
        // What the ledger puts back is what it knew of them: that they came today.
        assertThat(unwanted(0)).containsExactly("OF-1", "OF-2", "OF-3");
        assertThat(ledger.balance().closes()).isTrue();
    }

    /** OF-1 and OF-2, 308 cm³ each, came seven months ago, OF-9, 154 cm³, two years, and OF-3, 308 cm³, today: 1078 cm³. */
    @Test
    void theRackIsAsOldAsItsPieces() {
        rests();
        came("OF-9", 24);
        assertThat(mvc.get().uri("/api/yield/age"))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$[*].pieces")
                .asArray()
                .containsExactly(1, 0, 0, 2, 0, 1);
        assertThat(mvc.get().uri("/api/yield/age"))
                .bodyJson()
                .extractingPath("$[3].volumeMm3")
                .asNumber()
                .satisfies(n -> assertThat(n.doubleValue()).isEqualTo(616_000));
        assertThat(mvc.get().uri("/yield/age?months=6"))
                .hasStatusOk()
                .bodyText()
                .contains(
                        "Of 4 pieces, 1.1 litres together, 1 came a year ago or earlier.", "6 to 12 months on the rack")
                .contains("/rack/OF-1", "/rack/OF-2")
                .doesNotContain("/rack/OF-9");
        // A month to the day is in the second bar.
        came("OF-3", 1);
        assertThat(mvc.get().uri("/api/yield/age"))
                .bodyJson()
                .extractingPath("$[*].pieces")
                .asArray()
                .containsExactly(0, 1, 0, 2, 0, 1);
    }

    @Test
    void somethingThatIsNoNumberOfMonthsIsRefused() {
        assertThat(mvc.get().uri("/yield/offcuts?months=half"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("Months is not a whole number from 0 to 600; write for example 6.", "value=\"half\"");
        assertThat(mvc.get().uri("/api/yield/offcuts?months=601")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(mvc.get().uri("/yield/offcuts")).hasStatusOk().bodyText().contains("There is no such rest");
    }
}
