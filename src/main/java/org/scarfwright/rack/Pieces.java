package org.scarfwright.rack;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Volume;

/** The rack as the people who keep it see it. Every change writes to the ledger in the same transaction. */
public interface Pieces {
    /** How many pieces a page of a list holds at most. */
    int LARGEST_PAGE = 500;

    /**
     * @param page counted from 1; a page past the end is the last one
     * @param size pieces on a page, 1 to {@link #LARGEST_PAGE}
     */
    PieceList list(PieceFilter filter, PieceFilter.Sort sort, int page, int size);

    /**
     * Adds a piece to the rack.
     *
     * @param usual what a bare number means when the cells name no unit
     * @throws WrongPieceException with everything that is wrong; nothing is saved
     */
    Piece add(PieceCells cells, LengthUnit usual);

    /**
     * Everything that is wrong with what is said about a piece; saves nothing.
     *
     * @param seen the piece when it is to be changed; empty when it is to be added
     */
    List<CellError> faults(PieceCells cells, LengthUnit usual, @Nullable Piece seen);

    /**
     * Replaces what is said about a piece. Its code stays. A reading of moisture or warp that differs is added to those it
     * has; none is ever taken away.
     *
     * @param seen the piece as the person who edits it saw it
     * @throws WrongPieceException with everything that is wrong; nothing is saved
     * @throws PieceChangedSinceException when somebody changed it since
     * @throws org.scarfwright.web.ConflictException when it is not free and the edit would change more than place, note,
     *     cost and moisture
     */
    Piece change(Piece seen, PieceCells cells, LengthUnit usual);

    /**
     * Adds what was measured again to the readings a piece has; everything else about it stays. Of bow, crook, cup and twist
     * what is left empty keeps what was read last; the middle half and moisture count as not read this time. A reading
     * without a day is of today. A reading older than the newest is kept among the earlier ones and changes nothing else.
     *
     * @param seen the piece as the person who measured it saw it
     * @param readings only the cells of warp, moisture and their days are looked at
     * @throws WrongPieceException with everything that is wrong; nothing is saved
     * @throws PieceChangedSinceException when somebody changed it since
     * @throws org.scarfwright.web.ConflictException when warp was measured on a piece that is not free
     */
    Piece measure(Piece seen, PieceCells readings, LengthUnit usual);

    /** Every reading, the newest first. */
    List<Warp> warpReadings(String code);

    /** Every reading, the newest first. */
    List<MoistureReading> moistureReadings(String code);

    /**
     * Codes of pieces a person may mean by a code they typed, scanned or heard: case, spaces and hyphens do not matter, signs
     * that look alike count as one, digits and letters may be spelled out, and a label's whole address will do. One code when it
     * is plain which; several when the sign that looks alike decides; none when no piece is called so.
     */
    List<String> meant(String said);

    /** Names of places that hold a piece, in order. */
    List<String> places();

    /** How much wood is still there. Every state of {@link PieceState#THERE} is named. */
    Map<PieceState, Stock> stock();

    /** Volume of all pieces that are still there: on the rack, reserved or at the bench. */
    default Volume volume() {
        return volumeOf(stock());
    }

    /** Of all states together. */
    static Volume volumeOf(Map<PieceState, Stock> stock) {
        return stock.values().stream().map(Stock::volume).reduce(Volume.ZERO, Volume::plus);
    }

    /** Pieces of one state. */
    record Stock(long pieces, Volume volume) {
        static final Stock NONE = new Stock(0, Volume.ZERO);
    }
}
