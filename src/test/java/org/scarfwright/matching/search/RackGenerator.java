package org.scarfwright.matching.search;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import org.scarfwright.matching.search.SearchProblem.Line;
import org.scarfwright.matching.search.SearchProblem.Need;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchProblem.Pairing;
import org.scarfwright.matching.search.SearchProblem.Preparation;
import org.scarfwright.matching.search.SearchProblem.RestValue;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchProblem.StockPiece;

/**
 * Invented racks and orders of any size, the same for the same seed. Two sorts of shop: <i>varied</i>, with six designs in eight
 * woods, and <i>small</i>, with three designs in two woods. Long blanks, neck blanks and offcuts; some warped, so that they are
 * heads only and cheap; some with a defect that parts them in two; several thicknesses a piece can be brought to; moisture that
 * decides which pieces may be paired.
 */
final class RackGenerator {
    /** What to make. */
    record Size(int pieces, int orders, boolean varied) {}

    private record Design(
            double neckMm,
            double headMm,
            double thicknessMm,
            double headThicknessMm,
            List<Integer> angles,
            int arrangements) {}

    private record Part(int line, Role role, double thicknessMm, double widthMm) {}

    private static final double[] DEGREES = {10, 13, 15};
    private static final double KERF_MM = 1.6;
    private static final double TRUING_MM = 2;

    private final Random random;
    private final Size size;
    private final List<Design> designs = new ArrayList<>();
    private final List<Line> lines = new ArrayList<>();
    private final List<Need> needs = new ArrayList<>();
    private final List<Part> parts = new ArrayList<>();
    private final Map<String, Integer> setUps = new LinkedHashMap<>();
    private final Map<Boolean, Pairing> pairings = new LinkedHashMap<>();
    /** Segments that take the same needs share one list of them, as those of a real rack do. */
    private final Map<IntBuffer, int[]> lists = new HashMap<>();

    private final int woods;

    private final int[] wood;
    private final int[] moisture;
    private final double[] thickness;
    private final double[] width;
    private final boolean[] warped;
    private final int[] lineWood;

    private RackGenerator(Size size, long seed) {
        this.size = size;
        random = new Random(seed * 7_919 + size.pieces() + (size.varied() ? 1 : 0));
        woods = size.varied() ? 8 : 2;
        wood = new int[size.pieces()];
        moisture = new int[size.pieces()];
        thickness = new double[size.pieces()];
        width = new double[size.pieces()];
        warped = new boolean[size.pieces()];
        lineWood = new int[size.orders()];
    }

    static SearchProblem problem(Size size, long seed) {
        return new RackGenerator(size, seed).make();
    }

    private SearchProblem make() {
        for (int d = 0; d < (size.varied() ? 6 : 3); d++) {
            designs.add(design());
        }
        for (int p = 0; p < size.pieces(); p++) {
            wood[p] = random.nextInt(woods);
            moisture[p] = 12 + random.nextInt(9);
            thickness[p] = 22 + random.nextInt(13);
            width[p] = 52 + random.nextInt(45);
            warped[p] = random.nextInt(6) == 0;
        }
        for (int l = 0; l < size.orders(); l++) {
            addLine(l);
        }
        List<StockPiece> pieces = new ArrayList<>();
        for (int p = 0; p < size.pieces(); p++) {
            pieces.add(piece(p));
        }
        return new SearchProblem(lines, needs, pieces, DEGREES.length, setUps.size());
    }

    private Design design() {
        double scale = new double[] {330, 432, 457, 480, 560, 620}[random.nextInt(6)] + random.nextInt(20);
        int first = random.nextInt(DEGREES.length);
        List<Integer> angles = random.nextInt(3) == 0 ? List.of(first, (first + 1) % DEGREES.length) : List.of(first);
        return new Design(
                scale,
                150 + random.nextInt(60),
                18 + random.nextInt(6),
                13 + random.nextInt(3),
                angles,
                random.nextInt(4) == 0 ? 1 : 2);
    }

    private void addLine(int l) {
        Design d = designs.get(random.nextInt(designs.size()));
        lineWood[l] = random.nextInt(woods);
        List<Option> options = new ArrayList<>();
        for (int a : d.angles()) {
            double angle = Math.toRadians(DEGREES[a]);
            for (int arrangement = 0; arrangement < d.arrangements(); arrangement++) {
                boolean underlaid = arrangement == 0;
                double neck = d.neckMm() - (underlaid ? 0 : d.headThicknessMm() / Math.sin(angle));
                double head = d.headMm() - (underlaid ? d.thicknessMm() / Math.sin(angle) : 0);
                if (head <= 20 || neck <= 100) {
                    continue;
                }
                options.add(new Option(needs.size(), needs.size() + 1));
                needs.add(new Need(l, Role.NECK, a, um(neck + TRUING_MM)));
                parts.add(new Part(l, Role.NECK, d.thicknessMm(), 60));
                needs.add(new Need(l, Role.HEAD, a, um(head + TRUING_MM)));
                parts.add(new Part(l, Role.HEAD, d.headThicknessMm(), 75));
            }
        }
        int quantity = random.nextInt(4) == 0 ? 2 : 1;
        long weight = random.nextInt(4) == 0 ? 2 : 1;
        lines.add(new Line(
                "order " + l,
                quantity,
                weight,
                options,
                pairings.computeIfAbsent(random.nextInt(3) > 0, this::pairing)));
    }

    /** Within two points of moisture of each other, and of one wood where the order asks for it. */
    private Pairing pairing(boolean sameWood) {
        int steps = 9;
        int[] group = new int[size.pieces()];
        for (int p = 0; p < group.length; p++) {
            group[p] = (sameWood ? wood[p] * steps : 0) + moisture[p] - 12;
        }
        int groups = sameWood ? woods * steps : steps;
        boolean[][] compatible = new boolean[groups][groups];
        for (int n = 0; n < groups; n++) {
            for (int h = 0; h < groups; h++) {
                compatible[n][h] = n / steps == h / steps && Math.abs(n % steps - h % steps) <= 4;
            }
        }
        return new Pairing(group, group.clone(), compatible, false);
    }

    private StockPiece piece(int p) {
        double length = switch (random.nextInt(10)) {
            case 0, 1, 2 -> 650 + random.nextInt(9_500) / 10.0;
            case 3, 4, 5 -> 540 + random.nextInt(2_300) / 10.0;
            default -> 120 + random.nextInt(3_600) / 10.0;
        };
        List<Double> zones = new ArrayList<>();
        if (length > 400 && random.nextInt(7) == 0) {
            double first = length * (0.2 + random.nextInt(60) / 100.0);
            zones.add(first);
            zones.add(length - first - 15);
        } else {
            zones.add(length - 4);
        }
        double centsPerMm = (0.6 + wood[p] * 0.25) * width[p] * thickness[p] / 1_000 * (warped[p] ? 0.4 : 1);
        long rate = Math.round(centsPerMm * 1_000_000);
        List<RestValue> rests = List.of(new RestValue(um(150), rate * 6 / 10), new RestValue(um(450), rate));
        long value = Math.round(centsPerMm * length * (length < 450 ? 0.6 : 1));
        TreeSet<Double> levels = new TreeSet<>();
        for (int n = 0; n < needs.size(); n++) {
            if (fits(p, n, zones.get(0), Double.MAX_VALUE)) {
                levels.add(parts.get(n).thicknessMm());
            }
        }
        List<Preparation> preparations = new ArrayList<>();
        for (double sawn : levels) {
            preparations.add(preparation(p, sawn, zones, rests));
        }
        return new StockPiece(String.format("P%05d", p), value, preparations);
    }

    private Preparation preparation(int p, double sawn, List<Double> zones, List<RestValue> rests) {
        long[] bevel = new long[DEGREES.length];
        int[] setUp = new int[DEGREES.length];
        for (int a = 0; a < DEGREES.length; a++) {
            double angle = Math.toRadians(DEGREES[a]);
            bevel[a] = um(sawn / Math.tan(angle) + KERF_MM / Math.sin(angle));
            setUp[a] = setUps.computeIfAbsent(a + "/" + sawn, k -> setUps.size());
        }
        List<Segment> segments = new ArrayList<>();
        for (double zone : zones) {
            int[] here = new int[needs.size()];
            int count = 0;
            for (int n = 0; n < needs.size(); n++) {
                if (fits(p, n, zone, sawn) && needs.get(n).shortUm() < um(zone)) {
                    here[count++] = n;
                }
            }
            int[] found = Arrays.copyOf(here, count);
            segments.add(new Segment(um(zone), lists.computeIfAbsent(IntBuffer.wrap(found), k -> found), rests));
        }
        long planed = Math.round((thickness[p] - sawn) * width[p] * 1_000);
        return new Preparation("to " + sawn + " mm", um(sawn), um(KERF_MM), bevel, setUp, planed, segments);
    }

    private boolean fits(int p, int n, double zone, double sawn) {
        Part part = parts.get(n);
        boolean neck = part.role() == Role.NECK;
        return zone > 0
                && (wood[p] == lineWood[part.line()] || (!neck && random(p, part.line())))
                && !(neck && warped[p])
                && part.widthMm() <= width[p] + (neck ? 0 : 10)
                && part.thicknessMm() <= Math.min(sawn, thickness[p] - 2);
    }

    /** Whether a head of another wood is welcome: a fixed choice for a pair of wood and line. */
    private boolean random(int p, int line) {
        return (wood[p] * 31 + line * 17) % 5 == 0;
    }

    private static long um(double mm) {
        return Math.round(mm * 1000);
    }
}
