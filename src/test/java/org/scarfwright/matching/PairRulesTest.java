package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scarfwright.matching.Shelf.mm;

import org.junit.jupiter.api.Test;
import org.scarfwright.matching.Shelf.DesignBuilder;
import org.scarfwright.matching.Shelf.PieceBuilder;
import org.scarfwright.necks.MatchRule;

/** Every rule about the two pieces of one neck, with the sentence people read. */
class PairRulesTest {
    private static PairTrial pair(DesignBuilder design, PieceBuilder neck, PieceBuilder head) {
        return new PairTrial(design.build(), neck.build(), head.build(), Shelf.shop());
    }

    private static PieceBuilder neck() {
        return Shelf.piece("N1", "700", "90", "25");
    }

    private static PieceBuilder head() {
        return Shelf.piece("H1", "400", "90", "25");
    }

    private static Verdict.Refused refused(PairRule rule, PairTrial trial) {
        Verdict verdict = rule.judge(trial);
        assertThat(verdict).isInstanceOf(Verdict.Refused.class);
        assertThat(((Verdict.Refused) verdict).rule()).isEqualTo(rule.name());
        return (Verdict.Refused) verdict;
    }

    @Test
    void asksForTheSameWoodOnlyWhereTheDesignDoes() {
        PieceBuilder walnut = head().wood("walnut_black");
        assertThat(new MatchedWoodRule().judge(pair(Shelf.design(), neck(), walnut)))
                .isEqualTo(Verdict.FITS);
        DesignBuilder same = Shelf.design().match(MatchRule.SAME_WOOD);
        assertThat(new MatchedWoodRule().judge(pair(same, neck(), head()))).isEqualTo(Verdict.FITS);
        assertThat(refused(new MatchedWoodRule(), pair(same, neck(), walnut)).reason())
                .isEqualTo("the head must be of the neck's wood: N1 is Hard maple (sugar) and H1 is Black walnut");
    }

    @Test
    void asksForOneLot() {
        DesignBuilder same = Shelf.design().match(MatchRule.SAME_LOT);
        assertThat(new LotRule().judge(pair(same, neck().lot("L1", null), head().lot("L1", null))))
                .isEqualTo(Verdict.FITS);
        assertThat(refused(new LotRule(), pair(same, neck().lot("L1", null), head().lot("L2", null)))
                        .reason())
                .isEqualTo("neck and head must come from one lot: N1 is from L1 and H1 is from L2");
        assertThat(refused(new LotRule(), pair(same, neck(), head())).reason())
                .isEqualTo("neck and head must come from one lot: N1 is of no known lot and H1 is of no known lot");
    }

    @Test
    void asksForOnePiece() {
        DesignBuilder same = Shelf.design().match(MatchRule.SAME_PIECE);
        assertThat(new SamePieceRule().judge(pair(same, neck(), neck()))).isEqualTo(Verdict.FITS);
        assertThat(refused(new SamePieceRule(), pair(same, neck(), head())).reason())
                .isEqualTo("neck and head must come from one piece, and N1 and H1 are two");
    }

    @Test
    void keepsNeckAndHeadAboutAsDry() {
        assertThat(new MoisturePairRule().judge(pair(Shelf.design(), neck().moisture(7), head().moisture(9))))
                .isEqualTo(Verdict.FITS);
        assertThat(new MoisturePairRule().judge(pair(Shelf.design(), neck().moisture(7), head())))
                .isEqualTo(Verdict.FITS);
        assertThat(refused(new MoisturePairRule(), pair(Shelf.design(), neck().moisture(6.5), head().moisture(9)))
                        .reason())
                .isEqualTo("N1 at 6.5 % and H1 at 9 % differ by 2.5 points of moisture; 2 points at most is right");
    }

    @Test
    void letsLinesMeetThatLieAlikeFromTheCentre() {
        DesignBuilder lines = Shelf.design().linesMeet();
        PieceBuilder narrow = neck().strips("maple_sugar", "40", "walnut_black", "10", "maple_sugar", "40");
        PieceBuilder wide = Shelf.piece("H1", "400", "110", "25")
                .strips("cherry_black", "50.2", "walnut_black", "9.6", "cherry_black", "50.2");
        // Lines at ±5.0 and ±4.8 mm.
        assertThat(new LinesMeetRule().judge(pair(lines, narrow, wide))).isEqualTo(Verdict.FITS);
        PieceBuilder thicker = Shelf.piece("H1", "400", "110", "25")
                .strips("maple_sugar", "49", "walnut_black", "12", "maple_sugar", "49");
        Verdict.Refused refused = refused(new LinesMeetRule(), pair(lines, narrow, thicker));
        assertThat(refused.reason()).isEqualTo("the lamination lines of N1 and H1 miss each other by 1.0 mm"); // 6 − 5
        assertThat(refused.shortBy()).isEqualTo(mm("1"));
    }

    @Test
    void refusesALaminatedNeckWithASolidHead() {
        PieceBuilder strips = neck().strips("maple_sugar", "40", "walnut_black", "10", "maple_sugar", "40");
        assertThat(refused(new LinesMeetRule(), pair(Shelf.design().linesMeet(), strips, head()))
                        .reason())
                .isEqualTo("the lamination lines cannot meet: N1 has 2 within the neck's width and H1 has 0");
        assertThat(new LinesMeetRule().judge(pair(Shelf.design(), strips, head())))
                .isEqualTo(Verdict.FITS);
        assertThat(new LinesMeetRule().judge(pair(Shelf.design().linesMeet(), neck(), head())))
                .isEqualTo(Verdict.FITS);
    }

    @Test
    void refusesAPatternThatIsNotTheSameFromBothEdges() {
        PieceBuilder uneven = neck().strips("maple_sugar", "38", "walnut_black", "10", "maple_sugar", "42");
        Verdict.Refused refused =
                refused(new LinesMeetRule(), pair(Shelf.design().linesMeet(), uneven, uneven));
        assertThat(refused.shortBy()).isEqualTo(mm("4")); // lines at −7 and +3, turned over −3 and +7
    }

    @Test
    void doesNotCountLinesThatAreRippedAway() {
        // A 60 mm neck reaches 30 mm to each side; the outer lines at ±40 are gone.
        PieceBuilder outer = Shelf.piece("N1", "700", "100", "25")
                .strips("maple_sugar", "10", "cherry_black", "80", "maple_sugar", "10");
        assertThat(new LinesMeetRule().judge(pair(Shelf.design().linesMeet(), outer, head())))
                .isEqualTo(Verdict.FITS);
    }
}
