package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.lang.reflect.Method;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.hamcrest.Matchers;
import org.junit.jupiter.api.Test;
import org.scarfwright.ledger.Ledger.ActList;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Doing;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.PiecesChanged;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.RackImport;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.transaction.TestTransaction;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.IllegalTransactionStateException;
import org.springframework.transaction.annotation.Transactional;

/** What is written when something happens to a piece, and that it adds up. */
@Transactional
@SuppressWarnings("NullAway.Init")
abstract class LedgerContract {
    @Autowired
    Ledger ledger;

    @Autowired
    Verification verification;

    @Autowired
    Rack rack;

    @Autowired
    Pieces pieces;

    @Autowired
    RackImport rackImport;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    ApplicationEventPublisher events;

    @Autowired
    MockMvc mvc;

    @Autowired
    Clock clock;

    private Piece add(String code, String length) {
        return pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, code)
                        .put(PieceField.WOOD, "maple_sugar")
                        .put(PieceField.LENGTH, length)
                        .put(PieceField.WIDTH, "70")
                        .put(PieceField.THICKNESS, "22"),
                LengthUnit.MM);
    }

    private List<Act> acts(String code) {
        return ledger.newest(code, 50).acts();
    }

    @Test
    void everyActLeavesOneEntryTheNewestFirst() {
        Piece piece = add("LG-1", "640");
        rack.reserve(5, List.of(new Rack.PieceStamp("LG-1", piece.version())));
        rack.release(5);
        piece = pieces.change(piece, PieceWords.cells(piece).put(PieceField.LENGTH, "600"), LengthUnit.MM);
        piece = pieces.change(piece, PieceWords.cells(piece).put(PieceField.PLACE, "Bay 3"), LengthUnit.MM);
        pieces.change(piece, PieceWords.cells(piece).put(PieceField.NOTE, "sweet"), LengthUnit.MM);

        List<Act> acts = acts("lg-1");
        assertThat(acts)
                .extracting(Act::kind)
                .containsExactly(
                        PieceChanged.Kind.DESCRIBED,
                        PieceChanged.Kind.MOVED,
                        PieceChanged.Kind.MEASURED,
                        PieceChanged.Kind.RELEASED,
                        PieceChanged.Kind.RESERVED,
                        PieceChanged.Kind.BOUGHT);
        assertThat(acts.get(2).detail()).isEqualTo("Length 640 mm → 600 mm.");
        assertThat(acts.get(1).detail()).isEqualTo("nothing → Bay 3.");
        assertThat(acts.get(3).planId()).isEqualTo(5);
        assertThat(acts.get(5).volumeBefore()).isEqualTo(Volume.ZERO);
        // 640 mm × 70 mm × 22 mm in cubic micrometres
        assertThat(acts.get(5).volumeAfter().um3()).isEqualTo(new BigInteger("985600000000000"));
        assertThat(acts.get(2).change().um3()).isEqualTo(new BigInteger("-61600000000000"));
        assertThat(acts.get(0).who()).isEqualTo("the shop");
    }

    @Test
    void importLeavesOneEntryForEachNewPieceAndNoneForOneThatWasThere() {
        String file = "code,wood,length,width,thickness\nLG-2,maple_sugar,640,70,22\nLG-3,wenge,25 3/8 in,3 in,1 in\n";
        rackImport.save(file);
        rackImport.save(file);
        assertThat(acts("LG-2")).extracting(Act::kind).containsExactly(PieceChanged.Kind.IMPORTED);
        assertThat(acts("LG-3").get(0).detail()).isEqualTo("Imported from row 3 of a rack file.");
    }

    @Test
    void booksCloseToTheLastCubicMicrometreAfterAnythingThatHappens() {
        Volume before = ledger.balance().unexplained();
        Random random = new Random(60);
        List<Piece> there = new ArrayList<>();
        for (int i = 0; i < 120; i++) {
            switch (there.isEmpty() ? 0 : random.nextInt(4)) {
                case 0 -> there.add(add("", (1 + random.nextInt(900)) + "." + (100 + random.nextInt(900))));
                case 1 -> {
                    int n = random.nextInt(there.size());
                    String length = (1 + random.nextInt(900)) + "." + (100 + random.nextInt(900));
                    Piece p = there.get(n);
                    there.set(n, pieces.change(p, PieceWords.cells(p).put(PieceField.LENGTH, length), LengthUnit.MM));
                }
                case 2 -> rackImport.save("wood,length,width,thickness\nsapele," + (500 + i) + ",60.125,2 3/64 in\n");
                default -> {
                    Piece p = there.get(random.nextInt(there.size()));
                    rack.reserve(1000 + i, List.of(new Rack.PieceStamp(p.code(), p.version())));
                    rack.release(1000 + i);
                }
            }
        }
        Balance balance = ledger.balance();
        assertThat(balance.closes()).isTrue();
        assertThat(before).isEqualTo(Volume.ZERO);
        // The same sum by another way: every piece that is there, added up here.
        assertThat(rack.free().stream().map(Piece::volume).reduce(Volume.ZERO, Volume::plus))
                .isEqualTo(balance.in().minus(balance.out()));
    }

    @Test
    void saysSoWhenTheBooksDoNotClose() throws Exception {
        add("LG-4", "640");
        jdbc.sql("update piece set length_um = length_um + 1 where code = 'LG-4'")
                .update();
        Balance balance = ledger.balance();
        assertThat(balance.closes()).isFalse();
        // one micrometre of 70 mm × 22 mm
        assertThat(balance.unexplained().um3()).isEqualTo(new BigInteger("1540000000"));
        verification.run();
        mvc.perform(get("/ledger")).andExpect(content().string(Matchers.containsString("The books do not close.")));
        mvc.perform(get("/ledger/check")).andExpect(content().string(Matchers.containsString("length_um is 640001")));
    }

    @Test
    void entryOutsideATransactionIsRefused() {
        TestTransaction.end();
        PieceChanged change =
                new PieceChanged(PieceChanged.Kind.MOVED, "LG-5", Volume.ZERO, Volume.ZERO, null, "Moved by nobody.");
        assertThatThrownBy(() ->
                        events.publishEvent(new PiecesChanged(Doing.of(PieceChanged.Kind.MOVED), List.of(change))))
                .isInstanceOf(IllegalTransactionStateException.class);
        assertThat(acts("LG-5")).isEmpty();
    }

    @Test
    void actThatFailsLeavesNoEntry() {
        Piece piece = add("LG-6", "640");
        TestTransaction.flagForRollback();
        TestTransaction.end();
        assertThat(acts(piece.code())).isEmpty();
    }

    @Test
    void nothingInTheRoomChangesOrRemovesAnEntry() {
        assertThat(Stream.of(Ledger.class.getMethods()).map(Method::getName))
                .containsOnly("acts", "newest", "after", "entry", "lines", "balance", "refusal", "undo");
    }

    @Test
    void apiGivesActsAndABalanceThatCloses() throws Exception {
        add("LG-7", "640");
        mvc.perform(get("/api/ledger").param("piece", "LG-7"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.total").value(1))
                .andExpect(jsonPath("$.acts[0].kind").value("bought"))
                .andExpect(jsonPath("$.acts[0].volumeAfterMm3").value(985600.0));
        mvc.perform(get("/api/ledger/balance"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.closes").value(true))
                .andExpect(jsonPath("$.unexplainedMm3").value(0.0));
        mvc.perform(get("/api/ledger").param("before", "nought"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].pointer").value("/before"))
                .andExpect(jsonPath("$.errors[0].message")
                        .value("Before is no place in the ledger; write an entry’s number, or one of its acts, for"
                                + " example 57 or 57.2."));
        mvc.perform(get("/api/ledger").param("before", "5").param("after", "2"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].pointer").value("/after"));
        mvc.perform(get("/api/ledger").param("size", "501"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].message").value("Size is not a number from 1 to 500."));
    }

    @Test
    void pageShowsEntriesAndThatTheBooksClose() throws Exception {
        add("LG-8", "640");
        verification.run();
        mvc.perform(get("/ledger").param("piece", "LG-8"))
                .andExpect(status().isOk())
                .andExpect(content().string(Matchers.containsString("The books close.")))
                .andExpect(content().string(Matchers.containsString("Added to the rack: 640 mm × 70 mm × 22 mm.")));
        mvc.perform(get("/ledger").param("piece", "<b>\0").param("before", "-3"))
                .andExpect(status().isOk())
                .andExpect(content().string(Matchers.not(Matchers.containsString("<b>"))));
        mvc.perform(get("/ledger").param("until", "<b>yesterday"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(Matchers.containsString("&lt;b&gt;yesterday")))
                .andExpect(content().string(Matchers.containsString("is not a day; write for example 2026-11-30")));
    }

    /** The order and the number of all acts are those the database itself gives when asked for everything. */
    @Test
    void everyActIsFoundGoingToOlderOnesAndBackToNewerOnes() throws Exception {
        rackImport.save("""
                code,wood,length,width,thickness,unit
                KS-1,sapele,700,70,22,mm
                KS-2,sapele,700,70,22,mm
                KS-3,sapele,700,70,22,mm
                KS-4,sapele,700,70,22,mm
                """.getBytes(StandardCharsets.UTF_8));
        for (int i = 5; i < 12; i++) {
            add("KS-" + i, "640");
        }
        for (String piece : List.of("", "KS-2")) {
            List<String> all = jdbc.sql("select entry_id, position from act where piece_code like :piece"
                            + " order by entry_id desc, position desc")
                    .param("piece", piece.isEmpty() ? "%" : piece)
                    .query((rs, n) -> rs.getLong(1) + "." + rs.getInt(2))
                    .list();
            for (int size : List.of(1, 3, 500)) {
                List<String> older = new ArrayList<>();
                ActList page = ledger.newest(piece, size);
                assertThat(page.newer()).isNull();
                while (true) {
                    assertThat(page.total()).isEqualTo(all.size());
                    older.addAll(spots(page));
                    if (page.older() == null) {
                        break;
                    }
                    page = ledger.acts(piece, new Ledger.From(page.older(), true), size);
                }
                assertThat(older).isEqualTo(all);
                List<String> newer = new ArrayList<>(spots(page));
                while (page.newer() != null && newer.size() + size <= all.size()) {
                    page = ledger.acts(piece, new Ledger.From(page.newer(), false), size);
                    newer.addAll(0, spots(page));
                }
                assertThat(newer).isEqualTo(all.subList(all.size() - newer.size(), all.size()));
            }
        }
        String oldest = mvc.perform(get("/ledger").param("before", "2"))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString(StandardCharsets.UTF_8);
        assertThat(oldest).contains("Newest", "Newer").doesNotContain("Older");
    }

    private static List<String> spots(ActList page) {
        return page.acts().stream().map(a -> a.entry() + "." + a.position()).toList();
    }

    @Test
    void aDayShowsWhatHappenedUntilItsEnd() {
        add("LG-9", "640");
        LocalDate today = LocalDate.now(clock);
        assertThat(ledger.after(today)).isEmpty();
        Ledger.Spot first = ledger.after(LocalDate.of(1900, 1, 1)).orElseThrow();
        assertThat(first.entry())
                .isEqualTo(
                        jdbc.sql("select min(id) from entry").query(Long.class).single());
        assertThat(ledger.acts("", new Ledger.From(first, true), 5).acts()).isEmpty();
    }
}
