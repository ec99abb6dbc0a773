package org.scarfwright.matching;

import java.math.RoundingMode;
import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.scarfwright.joint.Bevel;
import org.scarfwright.matching.search.SearchProblem;
import org.scarfwright.matching.search.SearchProblem.Need;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchProblem.Preparation;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchProblem.StockPiece;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Volume;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.shop.Saw;

/**
 * A week's question as the search understands it, and what its numbers stand for.
 *
 * <p>Each saw leaves its own length for truing, so a part has one need for each truing allowance it may be cut with, and an
 * option for each pair of them.
 */
final class MatchModel {
    private final MatchInput input;
    private final ShopRules shop;
    private final StockStandards standards;

    private final ByHand byHand;
    /** What people decided, and pairs the search is to leave out beside that. */
    private final ByHand steered;
    /** By design as an order may use it. */
    private final Map<NeckDesign, List<Way>> ways = new LinkedHashMap<>();

    private final List<Piece> pieces = new ArrayList<>();
    private final List<List<Preparations.Prepared>> prepared = new ArrayList<>();
    private final List<NeedKey> needs = new ArrayList<>();
    /** A large rack has few different lists of needs, and one of each is kept. */
    private final Map<IntBuffer, int[]> lists = new HashMap<>();

    private final List<List<Way>> options = new ArrayList<>();
    private final SearchProblem problem;

    /** A part of one line as cut on a saw with this truing allowance. */
    private record NeedKey(int line, PartNeed part, Length truing) {}

    private record Variant(PartNeed part, Length truing) {}

    private record SetUp(Angle angle, Length sawn, String saw) {}

    MatchModel(MatchInput input) {
        this(input, List.of());
    }

    /** @param avoided pairs the search is to leave out although nobody decided so */
    MatchModel(MatchInput input, List<Hand.ForbidPair> avoided) {
        this.input = input;
        this.shop = ShopRules.of(input);
        this.byHand = new ByHand(input.hands());
        this.steered = avoided.isEmpty()
                ? byHand
                : new ByHand(Stream.<Hand>concat(input.hands().stream(), avoided.stream())
                        .toList());
        this.standards = StockStandards.of(input.designs(), shop);
        for (MatchInput.Line line : input.lines()) {
            ways.computeIfAbsent(line.design(), Way::of);
        }
        preparePieces();
        this.problem = build();
    }

    MatchInput input() {
        return input;
    }

    ByHand byHand() {
        return byHand;
    }

    ShopRules shop() {
        return shop;
    }

    StockStandards standards() {
        return standards;
    }

    SearchProblem problem() {
        return problem;
    }

    Piece piece(int index) {
        return pieces.get(index);
    }

    Preparations.Prepared prepared(int piece, int preparation) {
        return prepared.get(piece).get(preparation);
    }

    PartNeed part(int need) {
        return needs.get(need).part();
    }

    Way way(int line, int option) {
        return options.get(line).get(option);
    }

    List<Way> ways(NeckDesign design) {
        return ways.getOrDefault(design, List.of());
    }

    private void preparePieces() {
        Preparations preparations = new Preparations(shop);
        List<Piece> sorted = new ArrayList<>(input.pieces());
        sorted.sort(Comparator.comparing(Piece::code));
        if (input.asked().seed() != 0) {
            // The search breaks ties by the order of the pieces.
            Collections.shuffle(sorted, new Random(input.asked().seed()));
        }
        for (Piece piece : sorted) {
            List<PartNeed> parts = new ArrayList<>();
            ways.values()
                    .forEach(of -> of.forEach(w -> {
                        parts.add(w.neck());
                        parts.add(w.head());
                    }));
            parts.removeIf(part -> part.design().match() == MatchRule.SAME_PIECE
                    && !PairRules.allFit(new PairTrial(part.design(), piece, piece, shop)));
            List<Preparations.Prepared> found = preparations.of(piece, parts);
            if (!found.isEmpty()) {
                pieces.add(piece);
                prepared.add(found);
            }
        }
    }

    private SearchProblem build() {
        List<Angle> angles = ways.values().stream()
                .flatMap(List::stream)
                .map(Way::angle)
                .distinct()
                .sorted()
                .toList();
        Map<NeedKey, Integer> index = numberNeeds();
        List<Need> searchNeeds = needs.stream()
                .map(n -> new Need(
                        n.line(),
                        n.part().role(),
                        angles.indexOf(n.part().angle()),
                        n.part().bare().plus(n.truing()).um()))
                .toList();
        Map<Variant, int[]> byPart = numbersByPart();
        Map<SetUp, Integer> setUps = new HashMap<>();
        BookValue value = new BookValue(standards, input.settings(), input.day());
        List<StockPiece> stock = new ArrayList<>();
        for (int p = 0; p < pieces.size(); p++) {
            Piece piece = pieces.get(p);
            List<SearchProblem.RestValue> rests = value.ofRests(piece);
            List<Preparation> all = new ArrayList<>();
            for (Preparations.Prepared way : prepared.get(p)) {
                all.add(preparation(piece, way, angles, setUps, byPart, rests));
            }
            stock.add(new StockPiece(piece.code(), value.ofPiece(piece), all));
        }
        return new SearchProblem(lines(index), searchNeeds, stock, angles.size(), setUps.size());
    }

    /** Numbers every need that some piece can give: by line, way, neck before head, truing. */
    private Map<NeedKey, Integer> numberNeeds() {
        Map<PartNeed, Set<Length>> truings = new HashMap<>();
        for (List<Preparations.Prepared> ofPiece : prepared) {
            for (Preparations.Prepared p : ofPiece) {
                for (Preparations.Stretch s : p.stretches()) {
                    for (List<PartNeed> parts : List.of(s.shared(), s.alone())) {
                        parts.forEach(part -> truings.computeIfAbsent(part, k -> new TreeSet<>())
                                .add(p.saw().truing()));
                    }
                }
            }
        }
        Map<NeedKey, Integer> index = new HashMap<>();
        for (int l = 0; l < input.lines().size(); l++) {
            for (Way way : ways(input.lines().get(l).design())) {
                if (!truings.containsKey(way.neck()) || !truings.containsKey(way.head())) {
                    continue; // the other part alone makes no neck
                }
                for (PartNeed part : List.of(way.neck(), way.head())) {
                    for (Length truing : truings.getOrDefault(part, Set.of())) {
                        NeedKey key = new NeedKey(l, part, truing);
                        index.put(key, needs.size());
                        needs.add(key);
                    }
                }
            }
        }
        return index;
    }

    private List<SearchProblem.Line> lines(Map<NeedKey, Integer> index) {
        long divisor = divisor();
        long pinned = pinnedWeight(divisor);
        Map<NeckDesign, SearchProblem.Pairing> pairings = new HashMap<>();
        List<SearchProblem.Line> lines = new ArrayList<>();
        for (int l = 0; l < input.lines().size(); l++) {
            MatchInput.Line line = input.lines().get(l);
            List<Option> found = new ArrayList<>();
            List<Way> meaning = new ArrayList<>();
            for (Way way : ways(line.design())) {
                for (int neck : numbersOf(l, way.neck(), index)) {
                    for (int head : numbersOf(l, way.head(), index)) {
                        found.add(new Option(neck, head));
                        meaning.add(way);
                    }
                }
            }
            options.add(meaning);
            SearchProblem.Pairing pairing = pairings.computeIfAbsent(line.design(), this::pairing);
            lines.add(new SearchProblem.Line(
                    line.order(),
                    line.numbers().size(),
                    line.pin() == null ? line.priority() / divisor : pinned,
                    found,
                    pairing));
        }
        return lines;
    }

    private long divisor() {
        return input.lines().stream().mapToLong(MatchInput.Line::priority).reduce(0, MatchModel::greatestCommonDivisor);
    }

    /** More than all necks that are not pinned together, so that a plan without a pinned neck is never the fullest. */
    private long pinnedWeight(long divisor) {
        return 1
                + input.lines().stream()
                        .filter(l -> l.pin() == null)
                        .mapToLong(l -> l.numbers().size() * (l.priority() / divisor))
                        .sum();
    }

    /** What the pinned necks count above their priority when all of them are made. */
    long weightOfPins() {
        long divisor = divisor();
        long pinned = pinnedWeight(divisor);
        return input.lines().stream()
                .filter(l -> l.pin() != null)
                .mapToLong(l -> pinned - l.priority() / divisor)
                .sum();
    }

    private List<Integer> numbersOf(int line, PartNeed part, Map<NeedKey, Integer> index) {
        TreeMap<Length, Integer> found = new TreeMap<>();
        for (Saw saw : shop.saws()) {
            Integer number = index.get(new NeedKey(line, part, saw.truing()));
            if (number != null) {
                found.put(saw.truing(), number);
            }
        }
        return List.copyOf(found.values());
    }

    private static long greatestCommonDivisor(long a, long b) {
        return b == 0 ? a : greatestCommonDivisor(b, a % b);
    }

    private SearchProblem.Pairing pairing(NeckDesign design) {
        boolean[] neck = new boolean[pieces.size()];
        boolean[] head = new boolean[pieces.size()];
        for (int p = 0; p < pieces.size(); p++) {
            for (Preparations.Prepared way : prepared.get(p)) {
                for (Preparations.Stretch s : way.stretches()) {
                    for (List<PartNeed> parts : List.of(s.shared(), s.alone())) {
                        for (PartNeed part : parts) {
                            if (part.design().equals(design)) {
                                (part.role() == Role.NECK ? neck : head)[p] = true;
                            }
                        }
                    }
                }
            }
        }
        return PairingGroups.without(steered, pieces, PairingGroups.of(design, pieces, neck, head, shop));
    }

    private Preparation preparation(
            Piece piece,
            Preparations.Prepared way,
            List<Angle> angles,
            Map<SetUp, Integer> setUps,
            Map<Variant, int[]> byPart,
            List<SearchProblem.RestValue> rests) {
        long[] bevel = new long[angles.size()];
        int[] setUp = new int[angles.size()];
        Arrays.fill(bevel, -1);
        Arrays.fill(setUp, -1);
        for (int a = 0; a < angles.size(); a++) {
            Angle angle = angles.get(a);
            if (ShopRules.refusals(way.saw(), piece, way.sawn(), angle).isEmpty()) {
                bevel[a] = bevelLength(way.saw(), way.sawn(), angle).um();
                setUp[a] = setUps.computeIfAbsent(
                        new SetUp(angle, way.sawn(), way.saw().code()), k -> setUps.size());
            }
        }
        List<Segment> segments = new ArrayList<>();
        for (Preparations.Stretch s : way.stretches()) {
            segments.add(new Segment(
                    s.zone().length().um(),
                    numbers(piece, s.shared(), way.saw(), byPart),
                    rests,
                    numbers(piece, s.alone(), way.saw(), byPart)));
        }
        return new Preparation(
                "brought to " + Words.mm(way.sawn()) + ", cut on " + way.saw().code(),
                way.sawn().um(),
                way.saw().kerf().um(),
                bevel,
                setUp,
                planedPerMetre(piece, way.sawn()),
                segments);
    }

    /** What one bevel cut takes along the piece: its run and the saw's kerf. */
    static Length bevelLength(Saw saw, Length sawn, Angle angle) {
        return Bevel.run(sawn, angle).plus(Bevel.kerfRun(saw.kerf(), angle));
    }

    /** Cubic millimetres, rounded up. */
    private static long planedPerMetre(Piece piece, Length sawn) {
        Length metre = Length.ofMm(1000);
        Volume planed = Volume.of(
                metre, piece.width().length(), piece.thickness().length().minus(sawn));
        return planed.toMm3().setScale(0, RoundingMode.CEILING).longValueExact();
    }

    /** Needs of every line that may lie on this piece, for the rules and for those who decide. */
    private int[] numbers(Piece piece, List<PartNeed> parts, Saw saw, Map<Variant, int[]> numbers) {
        int[] found = parts.stream()
                .map(p -> numbers.getOrDefault(new Variant(p, saw.truing()), new int[0]))
                .flatMapToInt(Arrays::stream)
                .filter(n -> steered.allows(
                        input.lines().get(needs.get(n).line()),
                        needs.get(n).part().role(),
                        piece.code()))
                .sorted()
                .toArray();
        return lists.computeIfAbsent(IntBuffer.wrap(found), k -> found);
    }

    /** Every need of a part, of whichever line. */
    private Map<Variant, int[]> numbersByPart() {
        Map<Variant, List<Integer>> found = new HashMap<>();
        for (int n = 0; n < needs.size(); n++) {
            NeedKey key = needs.get(n);
            found.computeIfAbsent(new Variant(key.part(), key.truing()), k -> new ArrayList<>())
                    .add(n);
        }
        Map<Variant, int[]> arrays = new HashMap<>();
        found.forEach(
                (k, v) -> arrays.put(k, v.stream().mapToInt(Integer::intValue).toArray()));
        return arrays;
    }
}
