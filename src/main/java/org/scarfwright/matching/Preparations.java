package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.scarfwright.joint.Bevel;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.UsableSize;
import org.scarfwright.rack.Zone;
import org.scarfwright.shop.Saw;

/**
 * The thicknesses a piece can usefully be brought to, and what may then lie on it.
 *
 * <p>Only finished thicknesses of parts the piece could give are tried. Nothing is lost by that: a piece sawn thicker than the
 * thickest part on it has longer bevels and gives no part it would not give at that part's thickness, so it costs as much
 * length or more; and pieces brought to the thickness of a part share their saw set-ups. What is planed off is planed off the
 * finished part anyway.
 *
 * <p>Sections are crosscut from the piece, then flattened, then bevelled. Two parts that share a bevel are one section, and a
 * longer section of a warped piece leaves less thickness and width: a part that has enough by itself and not in the longest pair
 * it could be in is allowed alone.
 */
final class Preparations {
    private final ShopRules shop;

    Preparations(ShopRules shop) {
        this.shop = shop;
    }

    /** A piece brought to one thickness, cut on one saw. Stretches that can take nothing are listed too. */
    record Prepared(Length sawn, Saw saw, List<Stretch> stretches) {
        boolean takesAnything() {
            return stretches.stream()
                    .anyMatch(s -> !s.shared().isEmpty() || !s.alone().isEmpty());
        }
    }

    /**
     * One clear stretch.
     *
     * @param shared may lie here, and share their bevels with each other
     * @param alone may lie here with a bevel of their own
     */
    record Stretch(Zone zone, List<PartNeed> shared, List<PartNeed> alone) {}

    /** Thinnest first; empty when the piece can give none of these parts. */
    List<Prepared> of(Piece piece, List<PartNeed> needs) {
        List<PartNeed> possible = needs.stream()
                .filter(n -> PartRules.allFit(Trial.of(n, piece, shop)))
                .toList();
        Set<Length> levels = new TreeSet<>();
        possible.forEach(n -> levels.add(n.thickness()));
        List<Prepared> prepared = new ArrayList<>();
        for (Length sawn : levels) {
            Set<Saw> saws = new LinkedHashSet<>();
            for (PartNeed need : possible) {
                shop.sawFor(piece, sawn, need.angle()).ifPresent(saws::add);
            }
            for (Saw saw : saws) {
                Prepared p = prepare(piece, possible, sawn, saw);
                if (p.takesAnything()) {
                    prepared.add(p);
                }
            }
        }
        return prepared;
    }

    private Prepared prepare(Piece piece, List<PartNeed> needs, Length sawn, Saw saw) {
        List<PartNeed> allowed = needs.stream()
                .filter(n -> PartRules.allFit(new Trial(n, piece, sawn, saw, shop)))
                .toList();
        List<Stretch> stretches = new ArrayList<>();
        for (Zone zone : UsableSize.zones(piece)) {
            TreeMap<Angle, List<PartNeed>> byAngle = new TreeMap<>();
            for (PartNeed need : allowed) {
                if (!need.section(saw, sawn).isLongerThan(zone.length())) {
                    byAngle.computeIfAbsent(need.angle(), a -> new ArrayList<>())
                            .add(need);
                }
            }
            List<PartNeed> shared = new ArrayList<>();
            byAngle.values().forEach(same -> shared.addAll(sharing(piece, same, sawn, saw, zone)));
            List<PartNeed> alone = new ArrayList<>();
            byAngle.values().forEach(alone::addAll);
            alone.removeAll(shared);
            stretches.add(new Stretch(zone, shared, alone));
        }
        return new Prepared(sawn, saw, List.copyOf(stretches));
    }

    /** The parts of one angle that are thick and wide enough in every pair of them that finds room here. */
    private List<PartNeed> sharing(Piece piece, List<PartNeed> same, Length sawn, Saw saw, Zone zone) {
        List<PartNeed> shortFirst = same.stream()
                .sorted(Comparator.comparing((PartNeed n) -> n.shortSide(saw)))
                .toList();
        for (int last = shortFirst.size() - 1; last >= 0; last--) {
            PartNeed longest = shortFirst.get(last);
            if (sawn.isLongerThan(
                    Trial.thicknessOver(piece, pair(longest, longest, sawn, saw).min(zone.length()), shop))) {
                continue;
            }
            return shortFirst.subList(0, last + 1).stream()
                    .filter(n -> !n.width()
                            .isLongerThan(UsableSize.width(
                                    piece,
                                    pair(n, longest, sawn, saw).min(zone.length()),
                                    shop.settings().edgeAllowance())))
                    .toList();
        }
        return List.of();
    }

    private static Length pair(PartNeed a, PartNeed b, Length sawn, Saw saw) {
        return a.shortSide(saw)
                .plus(b.shortSide(saw))
                .plus(Bevel.run(sawn, a.angle()))
                .plus(Bevel.kerfRun(saw.kerf(), a.angle()));
    }
}
