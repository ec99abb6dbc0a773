package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.SearchProblem;
import org.scarfwright.measure.Moisture;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceWood;

/**
 * Sorts pieces into groups that behave alike as the neck or as the head of a design. Pieces that a pair rule cannot tell apart
 * are judged once; groups that may be paired with the same others are then merged.
 */
final class PairingGroups {
    private PairingGroups() {}

    /** All a pair rule looks at that differs between pieces. Same piece is told to the search in another way. */
    private record Kind(
            String wood,
            @Nullable String lot,
            @Nullable Moisture moisture,
            @Nullable PieceWood lines) {
        static Kind of(NeckDesign design, Piece piece) {
            return new Kind(
                    design.match() == MatchRule.SAME_WOOD ? piece.wood().key() : "",
                    design.match() == MatchRule.SAME_LOT ? piece.lot() : null,
                    piece.moisture() == null ? null : piece.moisture().content(),
                    // Two laminations of the same strips are of the same width, so their lines lie alike.
                    design.linesMeet() ? piece.wood() : null);
        }
    }

    /** Pieces with equal keys are alike to every pair rule of this design, but for same piece. */
    static Object key(NeckDesign design, Piece piece) {
        return Kind.of(design, piece);
    }

    /**
     * @param pieces in the order of the search
     * @param neck for each piece whether it can be the neck
     * @param head for each piece whether it can be the head
     */
    static SearchProblem.Pairing of(
            NeckDesign design, List<Piece> pieces, boolean[] neck, boolean[] head, ShopRules shop) {
        if (design.match() == MatchRule.SAME_PIECE) {
            return samePiece(design, pieces, neck, head, shop);
        }
        Map<Kind, Integer> kinds = new LinkedHashMap<>();
        List<Piece> examples = new ArrayList<>();
        int[] kindOf = new int[pieces.size()];
        Arrays.fill(kindOf, -1);
        for (int p = 0; p < pieces.size(); p++) {
            if (neck[p] || head[p]) {
                Piece piece = pieces.get(p);
                kindOf[p] = kinds.computeIfAbsent(Kind.of(design, piece), k -> {
                    examples.add(piece);
                    return examples.size() - 1;
                });
            }
        }
        int count = examples.size();
        boolean[][] fits = new boolean[count][count];
        for (int n = 0; n < count; n++) {
            for (int h = 0; h < count; h++) {
                fits[n][h] = PairRules.allFit(new PairTrial(design, examples.get(n), examples.get(h), shop));
            }
        }
        int[] neckMerged = merge(fits);
        int[] headMerged = merge(transposed(fits));
        boolean[][] compatible = new boolean[size(neckMerged)][size(headMerged)];
        for (int n = 0; n < count; n++) {
            for (int h = 0; h < count; h++) {
                compatible[neckMerged[n]][headMerged[h]] = fits[n][h];
            }
        }
        int[] neckGroup = new int[pieces.size()];
        int[] headGroup = new int[pieces.size()];
        for (int p = 0; p < pieces.size(); p++) {
            neckGroup[p] = neck[p] ? neckMerged[kindOf[p]] : -1;
            headGroup[p] = head[p] ? headMerged[kindOf[p]] : -1;
        }
        return new SearchProblem.Pairing(neckGroup, headGroup, compatible, false);
    }

    /** The same, with pairs that somebody forbade set apart: each of their pieces becomes a group of its own. */
    static SearchProblem.Pairing without(ByHand byHand, List<Piece> pieces, SearchProblem.Pairing pairing) {
        if (pairing.samePiece() || byHand.forbiddenPairs().isEmpty()) {
            return pairing;
        }
        Map<String, Integer> index = new HashMap<>();
        for (int p = 0; p < pieces.size(); p++) {
            index.put(pieces.get(p).code(), p);
        }
        int[] neckGroup = pairing.neckGroup().clone();
        int[] headGroup = pairing.headGroup().clone();
        List<boolean[]> compatible = new ArrayList<>();
        for (boolean[] row : pairing.compatible()) {
            compatible.add(row.clone());
        }
        int necks = compatible.size();
        int heads = necks == 0 ? 0 : compatible.get(0).length;
        for (List<String> pair : byHand.forbiddenPairs()) {
            Integer neck = index.get(pair.get(0));
            Integer head = index.get(pair.get(1));
            if (neck == null || head == null || neckGroup[neck] < 0 || headGroup[head] < 0) {
                continue;
            }
            if (neckGroup[neck] < necks) {
                compatible.add(compatible.get(neckGroup[neck]).clone());
                neckGroup[neck] = compatible.size() - 1;
            }
            if (headGroup[head] < heads) {
                int like = headGroup[head];
                compatible.replaceAll(row -> {
                    boolean[] wider = Arrays.copyOf(row, row.length + 1);
                    wider[row.length] = row[like];
                    return wider;
                });
                headGroup[head] = compatible.get(0).length - 1;
            }
            compatible.get(neckGroup[neck])[headGroup[head]] = false;
        }
        return new SearchProblem.Pairing(neckGroup, headGroup, compatible.toArray(new boolean[0][]), false);
    }

    /** A piece is alike to itself in everything but its lamination lines, which must be the same from both edges. */
    private static SearchProblem.Pairing samePiece(
            NeckDesign design, List<Piece> pieces, boolean[] neck, boolean[] head, ShopRules shop) {
        int[] neckGroup = new int[pieces.size()];
        int[] headGroup = new int[pieces.size()];
        for (int p = 0; p < pieces.size(); p++) {
            Piece piece = pieces.get(p);
            boolean both = neck[p] && head[p] && PairRules.allFit(new PairTrial(design, piece, piece, shop));
            neckGroup[p] = both ? 0 : -1;
            headGroup[p] = both ? 0 : -1;
        }
        return new SearchProblem.Pairing(neckGroup, headGroup, new boolean[][] {{true}}, true);
    }

    /** For each row the number of the first row that is equal, renumbered from 0. */
    private static int[] merge(boolean[][] rows) {
        Map<String, Integer> seen = new HashMap<>();
        int[] merged = new int[rows.length];
        for (int i = 0; i < rows.length; i++) {
            merged[i] = seen.computeIfAbsent(Arrays.toString(rows[i]), k -> seen.size());
        }
        return merged;
    }

    private static int size(int[] groups) {
        return Arrays.stream(groups).max().orElse(-1) + 1;
    }

    private static boolean[][] transposed(boolean[][] rows) {
        boolean[][] turned = new boolean[rows.length][rows.length];
        for (int i = 0; i < rows.length; i++) {
            for (int j = 0; j < rows.length; j++) {
                turned[j][i] = rows[i][j];
            }
        }
        return turned;
    }
}
