package org.scarfwright.ledger;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Cutting;
import org.scarfwright.rack.Doing;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.RackImport;

/** Everything a shop can do to its wood, done at random. */
final class Deeds {
    /** The plan the parts of random cuts belong to; nobody made it, and nobody asks for it. */
    static final long PLAN = 4_711;

    private final Random random;
    private final Pieces pieces;
    private final Rack rack;
    private final Cutting cutting;
    private final RackImport rackImport;
    private final Losses losses;
    private final Ledger ledger;
    private int count;

    Deeds(Random random, Services s) {
        this.random = random;
        this.pieces = s.pieces();
        this.rack = s.rack();
        this.cutting = s.cutting();
        this.rackImport = s.rackImport();
        this.losses = s.losses();
        this.ledger = s.ledger();
    }

    record Services(Pieces pieces, Rack rack, Cutting cutting, RackImport rackImport, Losses losses, Ledger ledger) {}

    /** What can be done. */
    enum Kind {
        ADD,
        IMPORT,
        RESIZE,
        MOVE,
        DESCRIBE,
        LOT_DAY,
        MEASURE,
        RESERVE,
        RELEASE,
        CUT,
        CUT_PARTS,
        SCRAP,
        SELL,
        WRITE_OFF,
        UNDO
    }

    Kind any() {
        Kind[] all = Kind.values();
        // Taking back is where most can go wrong, so it is tried more often.
        return random.nextInt(4) == 0 ? Kind.UNDO : all[random.nextInt(all.length)];
    }

    /**
     * @param there every piece that is there or was
     * @throws RuntimeException when the program refuses
     */
    void run(Kind kind, List<Piece> there) {
        count++;
        switch (kind) {
            case ADD -> add();
            case IMPORT ->
                rackImport.save("wood,length,width,thickness,lot,place\nsapele," + mm(300, 900)
                        + ",60.125,2 3/64 in,L-1,Bay 1\nwenge," + mm(300, 900) + ",61,22,L-2,\n");
            case RESIZE -> change(any(there), PieceField.LENGTH, mm(200, 900));
            case MOVE -> change(any(there), PieceField.PLACE, "Bay " + random.nextInt(4));
            case DESCRIBE -> change(any(there), PieceField.NOTE, "Note " + count + "\nwith \\ and a second line");
            case LOT_DAY -> {
                Piece piece = any(there);
                PieceCells cells = PieceWords.cells(piece).put(PieceField.LOT, "L-" + (1 + random.nextInt(2)));
                cells.put(PieceField.LOT_READY_ON, random.nextBoolean() ? "2026-12-0" + (1 + random.nextInt(9)) : "");
                pieces.change(piece, cells, LengthUnit.MM);
            }
            case MEASURE ->
                pieces.measure(
                        any(there),
                        new PieceCells()
                                .put(PieceField.BOW, String.valueOf(random.nextInt(5)))
                                .put(PieceField.MOISTURE, (6 + random.nextInt(5)) + ".5")
                                .put(PieceField.METER, "pin")
                                .put(PieceField.MEASURED_ON, "2026-0" + (1 + random.nextInt(9)) + "-11"),
                        LengthUnit.MM);
            case RESERVE -> {
                Piece piece = any(there);
                rack.reserve(PLAN + random.nextInt(3), List.of(new Rack.PieceStamp(piece.code(), piece.version())));
            }
            case RELEASE -> rack.release(PLAN + random.nextInt(3));
            case CUT -> cut(any(there), false);
            case CUT_PARTS -> cut(any(there), true);
            case SCRAP -> remove(any(there), PieceState.SCRAPPED);
            case SELL -> remove(any(there), PieceState.SOLD);
            case WRITE_OFF ->
                losses.writeOff(
                        new Losses.Neck(PLAN, "O-1", 1 + random.nextInt(3)),
                        List.of(new Losses.LostPart(random.nextBoolean(), kept())),
                        "Kit",
                        "Split.");
            case UNDO -> {
                List<Act> acts = ledger.newest("", 12).acts();
                ledger.undo(acts.get(random.nextInt(acts.size())).entry(), "", "Not this.");
            }
        }
    }

    void add() {
        PieceCells cells = new PieceCells()
                .put(PieceField.LENGTH, mm(300, 900))
                .put(PieceField.WIDTH, "70")
                .put(PieceField.THICKNESS, "22.5")
                .put(PieceField.LOT, "L-" + (1 + random.nextInt(2)))
                .put(PieceField.PLACE, "Bay " + random.nextInt(4));
        if (random.nextBoolean()) {
            cells.put(PieceField.WOOD, "maple_sugar");
        } else {
            cells.put(PieceField.LAMINATION, "maple_sugar 30 | walnut_black 10 | maple_sugar 30");
        }
        if (random.nextBoolean()) {
            cells.put(PieceField.COST, random.nextInt(40) + ".99")
                    .put(PieceField.BOW, "3")
                    .put(PieceField.DEFECTS, "knot 100-120");
        }
        pieces.add(cells, LengthUnit.MM);
    }

    /** Sometimes a little of a spoilt part can still be used. */
    private List<Cutting.Rest> kept() {
        TypedLength length = TypedLength.of(Length.ofUm(1000 + random.nextInt(40_000)));
        TypedLength across = TypedLength.of(Length.ofMm(20));
        return random.nextBoolean()
                ? List.of()
                : List.of(new Cutting.Rest(new Cutting.Size(length, across, across), null, null, null, "", null));
    }

    private String mm(int least, int most) {
        return (least + random.nextInt(most - least)) + "." + (100 + random.nextInt(900));
    }

    private Piece any(List<Piece> there) {
        return there.get(random.nextInt(there.size()));
    }

    private void change(Piece piece, PieceField field, String text) {
        pieces.change(piece, PieceWords.cells(piece).put(field, text), LengthUnit.MM);
    }

    private void remove(Piece piece, PieceState to) {
        losses.remove(List.of(new Rack.PieceStamp(piece.code(), piece.version())), to, "Kit", "It split.");
    }

    private void cut(Piece piece, boolean parts) {
        long length = piece.length().length().um();
        // Nothing on the rack is shorter than a millimetre.
        Length first = Length.ofUm(Math.max(1000, length / (2 + random.nextInt(4))));
        List<Cutting.Rest> rests = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            rests.add(new Cutting.Rest(
                    size(piece, Length.ofUm(Math.max(1000, first.um() / (1 + i)))),
                    null,
                    random.nextBoolean() ? Length.ZERO : null,
                    "Bay 9",
                    "",
                    null));
        }
        List<Outcome> outcomes = new ArrayList<>();
        outcomes.add(Outcome.waste(
                piece.code(), Outcome.Cause.KERF, new Volume(BigInteger.valueOf(random.nextLong(1L << 50))), null));
        if (parts) {
            outcomes.add(Outcome.part(
                    piece.code(),
                    new Outcome.NeckPart(PLAN, "O-1", 1 + random.nextInt(3), "D-1", random.nextBoolean()),
                    new Outcome.Size(first, Length.ofMm(50), Length.ofMm(20)),
                    Volume.of(first, Length.ofMm(50), Length.ofMm(20)),
                    null));
        }
        Optional<Cutting.Left> left = random.nextBoolean()
                ? Optional.empty()
                : Optional.of(
                        new Cutting.Left(size(piece, first), Length.ofUm(length - first.um()), random.nextBoolean()));
        cutting.cut(new Cutting.Cut(piece, left, rests, outcomes, Doing.of(PieceChanged.Kind.CUT, "Kit", "")));
    }

    private static Cutting.Size size(Piece piece, Length length) {
        return new Cutting.Size(TypedLength.of(length), piece.width(), piece.thickness());
    }

    /** What anybody can see of every piece, by code: everything but its version. */
    static Map<String, String> look(List<Piece> all, Pieces pieces) {
        Map<String, String> seen = new TreeMap<>();
        for (Piece p : all) {
            seen.put(
                    p.code(),
                    List.of(
                                    p.state(),
                                    p.wood(),
                                    p.length(),
                                    p.width(),
                                    p.thickness(),
                                    String.valueOf(p.moisture()),
                                    p.warp(),
                                    p.trimLeft(),
                                    p.trimRight(),
                                    p.defects(),
                                    p.setAside(),
                                    p.neckAllowed(),
                                    String.valueOf(p.lot()),
                                    String.valueOf(p.lotReadyOn()),
                                    String.valueOf(p.place()),
                                    String.valueOf(p.cost()),
                                    p.note(),
                                    p.since(),
                                    pieces.warpReadings(p.code()),
                                    pieces.moistureReadings(p.code()))
                            .toString());
        }
        return seen;
    }
}
