package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.scarfwright.matching.search.SearchProblem;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;

/** Groups must say of every two pieces what the rules say of them one by one. */
class PairingGroupsTest {
    @Test
    void agreeWithTheRulesOnEveryTwoPieces() {
        for (long seed = 1; seed <= 40; seed++) {
            Random r = new Random(seed);
            List<Piece> pieces = new ArrayList<>();
            for (int i = 0; i < 25; i++) {
                pieces.add(random(r, "P" + i));
            }
            boolean[] neck = new boolean[pieces.size()];
            boolean[] head = new boolean[pieces.size()];
            for (int i = 0; i < pieces.size(); i++) {
                neck[i] = r.nextInt(5) > 0;
                head[i] = r.nextInt(5) > 0;
            }
            for (MatchRule rule : List.of(MatchRule.ANY, MatchRule.SAME_WOOD, MatchRule.SAME_LOT)) {
                Shelf.DesignBuilder design = Shelf.design().match(rule);
                if (seed % 2 == 0) {
                    design.linesMeet();
                }
                check(design.build(), pieces, neck, head);
            }
        }
    }

    private static void check(NeckDesign design, List<Piece> pieces, boolean[] neck, boolean[] head) {
        SearchProblem.Pairing pairing = PairingGroups.of(design, pieces, neck, head, Shelf.shop());
        for (int n = 0; n < pieces.size(); n++) {
            for (int h = 0; h < pieces.size(); h++) {
                boolean right = neck[n]
                        && head[h]
                        && PairRules.allFit(new PairTrial(design, pieces.get(n), pieces.get(h), Shelf.shop()));
                assertThat(pairing.allows(n, h))
                        .as("%s with %s for %s", pieces.get(n), pieces.get(h), design.match())
                        .isEqualTo(right);
            }
        }
        long rows = Arrays.stream(pairing.compatible())
                .map(Arrays::toString)
                .distinct()
                .count();
        assertThat(rows).as("groups that behave alike are one").isEqualTo(pairing.compatible().length);
    }

    private static Piece random(Random r, String code) {
        Shelf.PieceBuilder p = Shelf.piece(code, "700", "90", "25");
        switch (r.nextInt(4)) {
            case 0 -> p.wood("walnut_black");
            case 1 -> p.strips("maple_sugar", "40", "walnut_black", "10", "maple_sugar", "40");
            case 2 -> p.strips("maple_sugar", "39.8", "walnut_black", "10.4", "maple_sugar", "39.8");
            default -> p.wood("maple_sugar");
        }
        if (r.nextInt(4) > 0) {
            p.moisture(6 + r.nextInt(5));
        }
        if (r.nextInt(3) > 0) {
            p.lot("L" + r.nextInt(3), null);
        }
        return p.build();
    }

    @Test
    void onePieceMustBeBothAndNothingElseIsCompared() {
        List<Piece> pieces = List.of(
                Shelf.piece("A", "900", "90", "25").build(),
                Shelf.piece("B", "900", "90", "25").build());
        SearchProblem.Pairing pairing = PairingGroups.of(
                Shelf.design().match(MatchRule.SAME_PIECE).build(),
                pieces,
                new boolean[] {true, true},
                new boolean[] {true, true},
                Shelf.shop());
        assertThat(pairing.allows(0, 0)).isTrue();
        assertThat(pairing.allows(0, 1)).isFalse();
    }
}
