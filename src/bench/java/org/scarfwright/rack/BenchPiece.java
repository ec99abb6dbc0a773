package org.scarfwright.rack;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Volume;

/** A piece of an invented shop, with the document the ledger keeps of it. Solid wood, without flaws. Lengths in micrometres. */
public final class BenchPiece {
    public final long id;
    public final String code;
    public final String species;
    public final LocalDate since;
    public final @Nullable String lot;
    public final long cost;
    public final boolean setAside;
    public long version;
    public PieceState state = PieceState.ON_RACK;
    public long length;
    public final long width;
    public final long thickness;
    public String lengthTyped;
    public String place;
    public String note = "";
    public final List<Moisture> moistures = new ArrayList<>();
    public @Nullable Long heldBy;
    public Instant heldAt = Instant.EPOCH;

    /** Its place in a list, so that it can be taken out of it at once. */
    public int index = -1;

    private final StringBuilder moistureLines = new StringBuilder();

    /** A reading. */
    public record Moisture(long id, int hundredths, LocalDate on) {}

    /** How large a piece is. */
    public record Size(long length, long width, long thickness) {}

    /** Where a piece comes from. */
    public record Origin(String species, @Nullable String lot, long cost, boolean setAside) {}

    public BenchPiece(long id, String code, Size size, Origin origin, LocalDate since, String place) {
        this.id = id;
        this.code = code;
        this.species = origin.species();
        this.lot = origin.lot();
        this.cost = origin.cost();
        this.setAside = origin.setAside();
        this.since = since;
        this.length = size.length();
        this.width = size.width();
        this.thickness = size.thickness();
        this.lengthTyped = typed(size.length());
        this.place = place;
    }

    public static List<String> codes(int count, Random random) {
        return PieceCodes.make(count, 0, c -> false, random);
    }

    public static String order(String code) {
        return PieceCodes.order(code);
    }

    public static String typed(long um) {
        return Length.ofUm(um).toString();
    }

    public void measured(Moisture reading) {
        moistures.add(reading);
        PieceDocument line = new PieceDocument();
        line.put(
                "moisture." + reading.id(),
                new PieceDocument()
                        .put("id", reading.id())
                        .put("mc_hundredths", reading.hundredths())
                        .put("meter", "PIN")
                        .put("read_on", reading.on())
                        .text());
        moistureLines.append(line.text());
    }

    public Volume volumeThere() {
        return state.isThere()
                ? Volume.of(Length.ofUm(length), Length.ofUm(width), Length.ofUm(thickness))
                : Volume.ZERO;
    }

    public String document() {
        PieceDocument d = new PieceDocument();
        d.put("id", id)
                .put("version", version)
                .put("code", code)
                .put("state", state)
                .put("species_id", species);
        d.put("length_um", length).put("length_typed", lengthTyped);
        d.put("width_um", width).put("width_typed", typed(width));
        d.put("thickness_um", thickness).put("thickness_typed", typed(thickness));
        d.put("grain", "QUARTER").put("trim_left_um", 0).put("trim_right_um", 0);
        if (!moistures.isEmpty()) {
            Moisture last = moistures.get(moistures.size() - 1);
            d.put("mc_hundredths", last.hundredths())
                    .put("mc_read_on", last.on())
                    .put("mc_meter", "PIN");
        }
        d.put("bow_um", 0).put("crook_um", 0).put("cup_um", 0).put("twist_um", 0);
        d.put("set_aside", setAside).put("neck_allowed", false).put("cost_cents", cost);
        d.put("note", note).put("since", since).put("lot", lot).put("place", place);
        String held = heldBy == null
                ? ""
                : new PieceDocument()
                        .put(
                                "held." + heldBy,
                                new PieceDocument()
                                        .put("plan_id", heldBy)
                                        .put("reserved_at", heldAt)
                                        .text())
                        .text();
        return d.text() + moistureLines + held;
    }
}
