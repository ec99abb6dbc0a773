package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.scarfwright.matching.search.SearchProblem.Line;
import org.scarfwright.matching.search.SearchProblem.Need;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchProblem.Pairing;
import org.scarfwright.matching.search.SearchProblem.Preparation;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchProblem.StockPiece;

/** The same problem told otherwise, or with a piece less. */
final class Variations {
    private Variations() {}

    /** Without one piece. */
    static SearchProblem without(SearchProblem problem, int piece) {
        List<Integer> kept = new ArrayList<>(
                IntStream.range(0, problem.pieces().size()).boxed().toList());
        kept.remove(piece);
        List<Integer> needs = IntStream.range(0, problem.needs().size()).boxed().toList();
        List<Integer> lines = IntStream.range(0, problem.lines().size()).boxed().toList();
        return told(problem, kept, needs, lines);
    }

    /** Pieces, needs and lines in another order. */
    static SearchProblem shuffled(SearchProblem problem, long seed) {
        Random random = new Random(seed);
        return told(
                problem,
                order(problem.pieces().size(), random),
                order(problem.needs().size(), random),
                order(problem.lines().size(), random));
    }

    /** Every length and every kerf so many times as long; a rest is worth as much for each length as before. */
    static SearchProblem longer(SearchProblem problem, int times) {
        return scaled(problem, times, 1);
    }

    /** Rests worth, and wood planed away, so many times as much for each length. */
    static SearchProblem dearer(SearchProblem problem, int times) {
        return scaled(problem, 1, times);
    }

    private static SearchProblem scaled(SearchProblem p, int length, int rate) {
        return new SearchProblem(
                p.lines(),
                p.needs().stream()
                        .map(n -> new Need(n.line(), n.role(), n.angle(), n.shortUm() * length))
                        .toList(),
                p.pieces().stream()
                        .map(s -> new StockPiece(
                                s.code(),
                                s.valueCents(),
                                s.preparations().stream()
                                        .map(r -> scaled(r, length, rate))
                                        .toList()))
                        .toList(),
                p.angles(),
                p.setUps());
    }

    private static Preparation scaled(Preparation r, int length, int rate) {
        return new Preparation(
                r.label(),
                r.sawnUm(),
                r.squareKerfUm() * length,
                Arrays.stream(r.bevelUm()).map(b -> b < 0 ? b : b * length).toArray(),
                r.setUp(),
                r.planedMm3PerMetre() * rate,
                r.segments().stream()
                        .map(s -> new Segment(
                                s.lengthUm() * length,
                                s.needs(),
                                s.rests().stream()
                                        .map(v ->
                                                new SearchProblem.RestValue(v.fromUm() * length, v.centsPerKm() * rate))
                                        .toList(),
                                s.alone()))
                        .toList());
    }

    private static List<Integer> order(int count, Random random) {
        List<Integer> order = new ArrayList<>(IntStream.range(0, count).boxed().toList());
        Collections.shuffle(order, random);
        return order;
    }

    private static SearchProblem told(SearchProblem p, List<Integer> pieces, List<Integer> needs, List<Integer> lines) {
        List<Line> toldLines = new ArrayList<>();
        for (int l : lines) {
            Line line = p.lines().get(l);
            List<Option> options = line.options().stream()
                    .map(o -> new Option(needs.indexOf(o.neck()), needs.indexOf(o.head())))
                    .toList();
            Pairing pairing = new Pairing(
                    pick(line.pairing().neckGroup(), pieces),
                    pick(line.pairing().headGroup(), pieces),
                    line.pairing().compatible(),
                    line.pairing().samePiece());
            toldLines.add(new Line(line.code(), line.quantity(), line.weight(), options, pairing));
        }
        List<Need> toldNeeds = needs.stream()
                .map(n -> p.needs().get(n))
                .map(n -> new Need(lines.indexOf(n.line()), n.role(), n.angle(), n.shortUm()))
                .toList();
        List<StockPiece> toldPieces = pieces.stream()
                .map(i -> p.pieces().get(i))
                .map(s -> new StockPiece(
                        s.code(),
                        s.valueCents(),
                        s.preparations().stream().map(r -> told(r, needs)).toList()))
                .toList();
        return new SearchProblem(toldLines, toldNeeds, toldPieces, p.angles(), p.setUps());
    }

    private static Preparation told(Preparation r, List<Integer> needs) {
        return new Preparation(
                r.label(),
                r.sawnUm(),
                r.squareKerfUm(),
                r.bevelUm(),
                r.setUp(),
                r.planedMm3PerMetre(),
                r.segments().stream()
                        .map(s -> new Segment(
                                s.lengthUm(), renumbered(s.needs(), needs), s.rests(), renumbered(s.alone(), needs)))
                        .toList());
    }

    private static int[] renumbered(int[] listed, List<Integer> needs) {
        return Arrays.stream(listed).map(needs::indexOf).sorted().toArray();
    }

    private static int[] pick(int[] values, List<Integer> order) {
        return order.stream().mapToInt(i -> values[i]).toArray();
    }
}
