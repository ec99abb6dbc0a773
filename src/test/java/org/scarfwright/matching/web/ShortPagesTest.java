package org.scarfwright.matching.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.matching.RunsShort;
import org.scarfwright.rack.RackImport;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.annotation.Transactional;

/** How many more necks the rack can give, against racks where it can be told by hand. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class ShortPagesTest {
    @Autowired
    MockMvcTester mvc;

    @Autowired
    RackImport rackImport;

    @Autowired
    RunsShort runsShort;

    /** Both parts of a neck from one piece: 457 and 180 mm of 20 mm wood at 10° need 635 mm (the joint's check value) and kerf. */
    @BeforeEach
    void aDesign() {
        assertThat(mvc.post()
                        .uri("/api/designs")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("""
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true, "match": "same_piece"}"""))
                .hasStatus(HttpStatus.CREATED);
    }

    private void rack(int pieces, int length) {
        StringBuilder file = new StringBuilder("code,wood,length,width,thickness,unit\n");
        for (int i = 1; i <= pieces; i++) {
            file.append("N").append(i).append(",maple_sugar,").append(length).append(",90,25,mm\n");
        }
        rackImport.save(file.toString().getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void anEmptyRackGivesNone() {
        assertThat(runsShort.more("D-1")).isEqualTo(new RunsShort.Answer("D-1", 0, true, 0, List.of()));
    }

    /** A piece of 800 mm has room for one neck of at least 635 mm and not for two; one of 500 mm for none. */
    @Test
    void eachPieceThatIsLongEnoughForOneGivesOne() {
        rack(3, 800);
        RunsShort.Answer answer = runsShort.more("d-1");
        assertThat(answer.necks()).isEqualTo(3);
        assertThat(answer.proved()).isTrue();
        assertThat(answer.pieces()).containsExactly("N1", "N2", "N3");
        assertThat(mvc.get().uri("/short?design=D-1"))
                .hasStatusOk()
                .bodyText()
                .contains("D-1: 3 necks, and no more.", "3 pieces are free.", "/rack/N2");
        assertThat(mvc.get().uri("/api/short?design=D-1"))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.necks")
                .isEqualTo(3);
        assertThat(mvc.get().uri("/short.csv?design=D-1"))
                .hasStatusOk()
                .hasHeader("Content-Disposition", "attachment; filename=\"runs-short.csv\"")
                .bodyText()
                .isEqualTo("design,necks,proved,free_pieces,pieces\r\nD-1,3,yes,3,N1 N2 N3\r\n");
    }

    @Test
    void tooShortPiecesGiveNone() {
        rack(3, 500);
        assertThat(runsShort.more("D-1").necks()).isZero();
        assertThat(runsShort.more("D-1").proved()).isTrue();
    }

    @Test
    void asksForNoMoreThanItSays() {
        rack(30, 800);
        RunsShort.Answer answer = runsShort.more("D-1");
        assertThat(answer.necks()).isEqualTo(RunsShort.MOST);
        assertThat(answer.all()).isTrue();
        assertThat(mvc.get().uri("/short?design=D-1")).bodyText().contains("D-1: 24 or more.");
    }

    @Test
    void anUnknownDesignIsSaid() {
        assertThat(mvc.get().uri("/short?design=X-9"))
                .hasStatus(HttpStatus.NOT_FOUND)
                .bodyText()
                .contains("There is no design “X-9”.");
        assertThat(mvc.get().uri("/short.csv?design=X-9")).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(mvc.get().uri("/api/short?design=X-9")).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(mvc.get().uri("/short")).hasStatusOk().bodyText().contains("Plain six-string");
    }
}
