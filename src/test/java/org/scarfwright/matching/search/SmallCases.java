package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.scarfwright.matching.search.SearchProblem.Line;
import org.scarfwright.matching.search.SearchProblem.Need;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchProblem.Pairing;
import org.scarfwright.matching.search.SearchProblem.Preparation;
import org.scarfwright.matching.search.SearchProblem.RestValue;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchProblem.StockPiece;

/** Random problems small enough to try everything, with every feature of a problem somewhere among them. */
final class SmallCases {
    private final Random random;
    private final int angles;
    private final int setUps;
    private final List<Need> needs = new ArrayList<>();
    private final List<Line> lines = new ArrayList<>();
    private final List<StockPiece> pieces = new ArrayList<>();

    private SmallCases(long seed) {
        random = new Random(seed);
        angles = 1 + random.nextInt(2);
        setUps = 1 + random.nextInt(4);
    }

    static SearchProblem problem(long seed) {
        return new SmallCases(seed).make();
    }

    private SearchProblem make() {
        int pieceCount = 1 + random.nextInt(4);
        int lineCount = 1 + random.nextInt(3);
        int left = pieceCount > 3 ? 3 : 4;
        for (int l = 0; l < lineCount && left > 0; l++) {
            int quantity = 1 + random.nextInt(Math.min(2, left));
            left -= quantity;
            addLine(l, quantity, pieceCount);
        }
        for (int p = 0; p < pieceCount; p++) {
            if (p > 0 && random.nextInt(4) == 0) {
                StockPiece twin = pieces.get(p - 1);
                pieces.add(new StockPiece("P" + p, twin.valueCents(), twin.preparations()));
            } else {
                pieces.add(piece(p));
            }
        }
        return new SearchProblem(lines, needs, pieces, angles, setUps);
    }

    private void addLine(int index, int quantity, int pieceCount) {
        Pairing pairing = pairing(pieceCount);
        if (index > 0 && random.nextInt(4) == 0) {
            pairing = lines.get(index - 1).pairing();
        }
        List<Option> options = new ArrayList<>();
        int count = 1 + random.nextInt(2);
        for (int o = 0; o < count; o++) {
            int angle = random.nextInt(angles);
            int neck = needs.size();
            needs.add(new Need(index, Role.NECK, angle, 1_000 * (30 + random.nextInt(5) * 7L)));
            if (o > 0
                    && random.nextInt(5) == 0
                    && needs.get(options.get(0).head()).angle() == angle) {
                options.add(new Option(neck, options.get(0).head()));
            } else {
                needs.add(new Need(index, Role.HEAD, angle, 1_000 * (10 + random.nextInt(4) * 6L)));
                options.add(new Option(neck, neck + 1));
            }
        }
        long weight = random.nextInt(3) == 0 ? 1 + random.nextInt(3) : 1;
        lines.add(new Line("L" + index, quantity, weight, options, pairing));
    }

    private Pairing pairing(int pieceCount) {
        int neckGroups = 1 + random.nextInt(3);
        int headGroups = 1 + random.nextInt(3);
        int[] neck = new int[pieceCount];
        int[] head = new int[pieceCount];
        for (int p = 0; p < pieceCount; p++) {
            neck[p] = random.nextInt(8) == 0 ? -1 : random.nextInt(neckGroups);
            head[p] = random.nextInt(8) == 0 ? -1 : random.nextInt(headGroups);
        }
        boolean[][] compatible = new boolean[neckGroups][headGroups];
        for (boolean[] row : compatible) {
            for (int h = 0; h < row.length; h++) {
                row[h] = random.nextInt(4) > 0;
            }
        }
        return new Pairing(neck, head, compatible, random.nextInt(6) == 0);
    }

    private StockPiece piece(int index) {
        int count = 1 + random.nextInt(random.nextInt(3) == 0 ? 2 : 1);
        List<Preparation> preparations = new ArrayList<>();
        long length = 0;
        for (int r = 0; r < count; r++) {
            List<Segment> segments = new ArrayList<>();
            int segmentCount = random.nextInt(3) == 0 ? 2 : 1;
            List<RestValue> rests = rests();
            for (int s = 0; s < segmentCount; s++) {
                segments.add(segment(rests, segmentCount));
                length += segments.get(s).lengthUm();
            }
            long[] bevel = new long[angles];
            int[] setUp = new int[angles];
            for (int a = 0; a < angles; a++) {
                boolean none = random.nextInt(12) == 0;
                bevel[a] = none ? -1 : 1_000 * random.nextInt(12) + random.nextInt(1000);
                setUp[a] = none ? -1 : random.nextInt(setUps);
            }
            long kerf = random.nextInt(3) * 1_500L;
            preparations.add(
                    new Preparation("p" + r, 20_000, kerf, bevel, setUp, 1_000L * random.nextInt(200), segments));
        }
        // Sometimes far below what its rests are worth: cutting it then earns money.
        long value = length / 1000 * (random.nextInt(8) == 0 ? 1 : 4 + random.nextInt(8)) + random.nextInt(40);
        return new StockPiece("P" + index, value, preparations);
    }

    private Segment segment(List<RestValue> rests, int segmentCount) {
        long length = 1_000L * (segmentCount == 1 ? 40 + random.nextInt(150) : 25 + random.nextInt(90));
        List<Integer> listed = new ArrayList<>();
        List<Integer> alone = new ArrayList<>();
        for (int n = 0; n < needs.size(); n++) {
            int luck = random.nextInt(12);
            if (luck > 2) {
                listed.add(n);
            } else if (luck > 0) {
                alone.add(n);
            }
        }
        return new Segment(
                length + random.nextInt(1000),
                listed.stream().mapToInt(Integer::intValue).toArray(),
                rests,
                alone.stream().mapToInt(Integer::intValue).toArray());
    }

    private List<RestValue> rests() {
        List<RestValue> rests = new ArrayList<>();
        int count = random.nextInt(3);
        long from = 0;
        long rate = 0;
        for (int i = 0; i < count; i++) {
            from += 1_000L * (5 + random.nextInt(40));
            rate += 1_000_000L * (1 + random.nextInt(4));
            rests.add(new RestValue(from, rate));
        }
        return rests;
    }
}
