package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Bevel;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceStrip;
import org.scarfwright.web.Strip;

/**
 * One piece of a plan with the parts that lie on it, as it is drawn and cut.
 *
 * @param parts lane by lane from the near edge, in each from the left end
 * @param kerf of the saw that makes its bevels
 */
public record LaidOut(Plan.PieceLayout layout, List<Placed> parts, Length kerf) {
    public LaidOut {
        parts = List.copyOf(parts);
    }

    /**
     * A part and its neck.
     *
     * @param place number of the neck on the plan, from 1
     */
    public record Placed(int place, boolean head, Plan.Pairing pairing, Plan.Part part) {
        /** What it is called on drawings, such as "3 head". */
        public String label() {
            return place + (head ? " head" : " neck");
        }
    }

    /**
     * A lane as ripped.
     *
     * @param near distance of its near edge from the piece's near edge
     */
    public record Lane(int number, Length near, Length width) {}

    public static LaidOut of(Plan plan, Plan.PieceLayout layout, Length kerf) {
        List<Placed> parts = new ArrayList<>();
        for (int i = 0; i < plan.pairings().size(); i++) {
            Plan.Pairing p = plan.pairings().get(i);
            if (p.neck().piece().equals(layout.piece())) {
                parts.add(new Placed(i + 1, false, p, p.neck()));
            }
            if (p.head().piece().equals(layout.piece())) {
                parts.add(new Placed(i + 1, true, p, p.head()));
            }
        }
        parts.sort(Comparator.comparingInt((Placed x) -> x.part().lane())
                .thenComparing(x -> x.part().from()));
        return new LaidOut(layout, parts, kerf);
    }

    /** The lanes from the near edge; one over the whole width when the piece is not ripped. */
    public List<Lane> lanes() {
        int count = parts.stream().mapToInt(x -> x.part().lane()).max().orElse(1);
        List<Lane> lanes = new ArrayList<>();
        Length near = Length.ZERO;
        for (int number = 1; number <= count; number++) {
            Length width = count == 1 ? layout.width() : width(number);
            lanes.add(new Lane(number, near, width));
            near = near.plus(width).plus(kerf);
        }
        return List.copyOf(lanes);
    }

    private Length width(int lane) {
        Length width = Length.ZERO;
        for (Placed x : parts) {
            width = x.part().lane() == lane ? width.max(x.part().width()) : width;
        }
        for (Plan.Stretch rest : layout.rests()) {
            width = rest.lane() == lane ? width.max(rest.width()) : width;
        }
        return width;
    }

    /** The cuts in the order they are made: lane by lane, in each from the left end. */
    public List<Plan.Cut> cuts() {
        return layout.cuts().stream()
                .sorted(Comparator.comparingInt(Plan.Cut::lane).thenComparing(Plan.Cut::from))
                .toList();
    }

    /** Run of a bevel along the piece; zero for a square cut. */
    public Length run(@Nullable Angle angle) {
        return angle == null ? Length.ZERO : Bevel.run(layout.sawnThickness(), angle);
    }

    /** The piece with its parts on it, flattened. */
    public Strip strip(Piece piece) {
        List<Strip.Lane> drawn = lanes().stream()
                .map(lane -> new Strip.Lane(
                        lane.near(),
                        lane.width(),
                        parts.stream()
                                .filter(x -> x.part().lane() == lane.number())
                                .map(this::drawn)
                                .toList(),
                        layout.cuts().stream()
                                .filter(c -> c.lane() == lane.number())
                                .map(c -> new Strip.Cut(c.from(), c.to(), run(c.angle())))
                                .toList(),
                        layout.rests().stream()
                                .filter(r -> r.lane() == lane.number() && r.usable())
                                .map(r -> new Strip.Rest(r.from(), r.to(), r.width()))
                                .toList()))
                .toList();
        return PieceStrip.of(piece).cutInto(drawn, layout.sawnThickness());
    }

    private Strip.Part drawn(Placed x) {
        Plan.Part part = x.part();
        return new Strip.Part(
                String.valueOf(x.place()),
                x.label(),
                part.from(),
                part.to(),
                run(x.pairing().angle()),
                part.bevelAtLeft(),
                part.width(),
                x.head());
    }
}
