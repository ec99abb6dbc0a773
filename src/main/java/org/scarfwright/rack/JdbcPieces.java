package org.scarfwright.rack;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Volume;
import org.scarfwright.web.ConflictException;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class JdbcPieces implements Pieces {
    private static final int JUDGED_AT_ONCE = 1000;
    private static final List<PieceField> READINGS = Stream.concat(
                    PieceReader.WARP.stream(),
                    Stream.of(
                            PieceField.STICK_LENGTH,
                            PieceField.STICK_DISTANCE,
                            PieceField.WARP_ON,
                            PieceField.MEASURED_ON,
                            PieceField.MOISTURE,
                            PieceField.MOISTURE_ON,
                            PieceField.METER,
                            PieceField.UNIT))
            .toList();

    private final PieceTable table;
    private final PieceTexts texts;
    private final SpeciesCatalog woods;
    private final PieceUses uses;
    private final ApplicationEventPublisher events;
    private final Clock clock;
    private final RandomGenerator random = new SecureRandom();

    JdbcPieces(
            PieceTable table,
            PieceTexts texts,
            SpeciesCatalog woods,
            PieceUses uses,
            ApplicationEventPublisher events,
            Clock clock) {
        this.table = table;
        this.texts = texts;
        this.woods = woods;
        this.uses = uses;
        this.events = events;
        this.clock = clock;
    }

    /** Not read-only: what pieces can be is brought up to date when it is asked for. */
    @Override
    @Transactional
    public PieceList list(PieceFilter filter, PieceFilter.Sort sort, int page, int size) {
        if (filter.can() != null) {
            judge();
        }
        int onPage = Math.max(1, Math.min(size, LARGEST_PAGE));
        if (!filter.words().isBlank()) {
            return searched(filter, sort, page, onPage);
        }
        PieceTable.Where where = where(filter);
        long total = table.count(where);
        int pages = (int) Math.max(1, (total + onPage - 1) / onPage);
        int shown = Math.max(1, Math.min(page, pages));
        List<Long> ids = table.ids(where, order(sort, filter.state()), onPage, (long) (shown - 1) * onPage);
        return new PieceList(table.loadIds(ids), shown, pages, total);
    }

    private PieceList searched(PieceFilter filter, PieceFilter.Sort sort, int page, int onPage) {
        List<Long> ids = texts.found(filter, sort);
        if (filter.can() != null) {
            Set<Long> able = new HashSet<>(table.ids(where(filter), order(sort, filter.state())));
            ids = ids.stream().filter(able::contains).toList();
        }
        int pages = Math.max(1, (ids.size() + onPage - 1) / onPage);
        int shown = Math.max(1, Math.min(page, pages));
        int first = Math.min(ids.size(), (shown - 1) * onPage);
        return new PieceList(
                table.loadIds(ids.subList(first, Math.min(ids.size(), first + onPage))), shown, pages, ids.size());
    }

    /** Judges the pieces that were not judged by the designs and rules of now: all of them once, then those that changed. */
    private void judge() {
        PieceUses.Standard standard = uses.standard();
        List<Long> ids = table.notJudged(standard.key(), PieceState.THERE);
        for (int from = 0; from < ids.size(); from += JUDGED_AT_ONCE) {
            Map<Piece, PieceUses.Fitness> fitness = new LinkedHashMap<>();
            table.loadIds(ids.subList(from, Math.min(ids.size(), from + JUDGED_AT_ONCE)))
                    .forEach(p -> fitness.put(p, standard.of(p)));
            table.keepFitness(standard.key(), fitness);
        }
    }

    @Override
    @Transactional
    public Piece add(PieceCells cells, LengthUnit usual) {
        PieceReader.Reading reading = reader().read(cells, usual, null);
        PieceFacts facts = sound(reading, null);
        String code = reading.code();
        if (code == null) {
            code = PieceCodes.make(
                            1,
                            table.count(new PieceTable.Where("1 = 1", Map.of())),
                            c -> !table.existing(List.of(c)).isEmpty(),
                            random)
                    .get(0);
        }
        Set<String> lots;
        try {
            lots = table.insert(List.of(new PieceTable.NewPiece(code, null, facts, LocalDate.now(clock))));
        } catch (DuplicateKeyException e) {
            throw new ConflictException("Another piece was added at the same moment; send it again.", e);
        }
        Piece piece = table.loadCodes(List.of(code)).get(0);
        events.publishEvent(new PiecesChanged(
                Doing.of(PieceChanged.Kind.BOUGHT),
                List.of(new PieceChanged(
                        PieceChanged.Kind.BOUGHT,
                        code,
                        Volume.ZERO,
                        piece.volume(),
                        null,
                        "Added to the rack: " + PieceWords.size(piece) + ".")),
                List.of(),
                lots));
        return piece;
    }

    @Override
    @Transactional(readOnly = true)
    public List<CellError> faults(PieceCells cells, LengthUnit usual, @Nullable Piece seen) {
        return errors(reader().read(cells, usual, seen), seen);
    }

    private PieceFacts sound(PieceReader.Reading reading, @Nullable Piece seen) {
        List<CellError> errors = errors(reading, seen);
        PieceFacts facts = reading.facts();
        if (!errors.isEmpty() || facts == null) {
            throw new WrongPieceException(errors);
        }
        return facts;
    }

    private List<CellError> errors(PieceReader.Reading reading, @Nullable Piece seen) {
        List<CellError> errors = new ArrayList<>(reading.errors());
        String code = reading.code();
        if (code != null && seen == null && !table.existing(List.of(code)).isEmpty()) {
            errors.add(new CellError(
                    PieceField.CODE,
                    -1,
                    code,
                    "“" + code + "” is taken by another piece; write another, or leave it empty and one is made"));
        }
        if (code != null && seen != null && !code.equals(seen.code())) {
            errors.add(new CellError(
                    PieceField.CODE,
                    -1,
                    code,
                    "“" + code + "” is another code; a piece keeps the one written on it, " + seen.code()));
        }
        return errors;
    }

    @Override
    @Transactional
    public Piece change(Piece seen, PieceCells cells, LengthUnit usual) {
        PieceFacts facts = sound(reader().read(cells, usual, seen), seen);
        PieceDifference difference = PieceDifference.between(seen, facts);
        if (difference.isNothing()) {
            return seen;
        }
        if (seen.state() != PieceState.ON_RACK && !difference.inShape().isEmpty()) {
            throw new ConflictException("Piece " + seen.code() + " is " + PieceWords.state(seen.state())
                    + "; its size, wood and flaws stay as they are until it is free. "
                    + (seen.state() == PieceState.RESERVED ? "Undo the plan that holds it first." : ""));
        }
        Set<String> lots;
        try {
            lots = table.replace(seen, facts).orElseThrow(() -> new PieceChangedSinceException(seen.code()));
        } catch (DuplicateKeyException e) {
            throw new ConflictException("The same place or lot was added at the same moment; send it again.", e);
        }
        Piece piece = table.loadCodes(List.of(seen.code())).get(0);
        List<PieceChanged> acts = difference.acts(seen, piece);
        events.publishEvent(new PiecesChanged(Doing.of(acts.get(0).kind()), acts, List.of(), lots));
        return piece;
    }

    @Override
    @Transactional
    public Piece measure(Piece seen, PieceCells readings, LengthUnit usual) {
        boolean warp = PieceReader.WARP.stream().anyMatch(readings::has);
        if (!warp && !readings.has(PieceField.MOISTURE)) {
            throw new WrongPieceException(List.of(new CellError(
                    PieceField.BOW, -1, "", "is empty, and so is every other reading; write at least one")));
        }
        PieceCells cells = PieceWords.cells(seen);
        READINGS.forEach(f -> cells.put(f, readings.get(f)));
        if (warp) {
            keep(cells, PieceField.BOW, seen.warp().bow());
            keep(cells, PieceField.CROOK, seen.warp().crook());
            keep(cells, PieceField.CUP, seen.warp().cup());
            if (!cells.has(PieceField.STICK_GAP)) {
                keep(cells, PieceField.TWIST, seen.warp().twist());
            }
            today(cells, PieceField.WARP_ON);
        }
        if (cells.has(PieceField.MOISTURE)) {
            today(cells, PieceField.MOISTURE_ON);
        }
        return change(seen, cells, usual);
    }

    private static void keep(PieceCells cells, PieceField field, Length last) {
        if (!cells.has(field)) {
            cells.put(field, last.toString());
        }
    }

    private void today(PieceCells cells, PieceField day) {
        if (!cells.has(day) && !cells.has(PieceField.MEASURED_ON)) {
            cells.put(day, LocalDate.now(clock).toString());
        }
    }

    @Override
    @Transactional(readOnly = true)
    public List<Warp> warpReadings(String code) {
        return table.loadCodes(List.of(PieceCodes.written(code))).stream()
                .flatMap(p -> table.warpReadings(List.of(p.id())).getOrDefault(p.id(), List.of()).stream())
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public List<MoistureReading> moistureReadings(String code) {
        return table.loadCodes(List.of(PieceCodes.written(code))).stream()
                .flatMap(p -> table.moistureReadings(List.of(p.id())).getOrDefault(p.id(), List.of()).stream())
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public List<String> meant(String said) {
        // What is written on a label needs no guessing.
        if (PieceCodes.refusal(said).isEmpty()
                && !table.existing(List.of(PieceCodes.written(said))).isEmpty()) {
            return List.of(PieceCodes.written(said));
        }
        return texts.meant(said);
    }

    @Override
    @Transactional(readOnly = true)
    public List<String> places() {
        return table.placesInUse();
    }

    @Override
    @Transactional(readOnly = true)
    public Map<PieceState, Stock> stock() {
        return table.stock(PieceState.THERE);
    }

    private PieceReader reader() {
        return new PieceReader(new WoodNames(woods.all()), clock);
    }

    /** All it asks for but words. */
    private PieceTable.Where where(PieceFilter filter) {
        List<String> conditions = new ArrayList<>(List.of("1 = 1"));
        Map<String, Object> values = new HashMap<>();
        if (filter.wood() != null) {
            values.put("wood", filter.wood());
            // Laminations are few: where none has the wood, the pieces are read off an index.
            conditions.add(
                    table.isInStrips(filter.wood())
                            ? "(p.species_id = :wood or (p.species_id is null and exists"
                                    + " (select 1 from piece_strip s where s.piece_id = p.id and s.species_id = :wood)))"
                            : "p.species_id = :wood");
        }
        if (filter.state() != null) {
            values.put("state", filter.state().name());
            conditions.add("p.state = :state");
        }
        if (filter.place() != null) {
            values.put("place", PieceTable.key(filter.place()));
            conditions.add("h.name_key = :place");
        }
        if (filter.length() != null) {
            values.put("length", filter.length().um());
            conditions.add("p.length_um >= :length");
        }
        if (filter.width() != null) {
            values.put("width", filter.width().um());
            conditions.add("p.width_um >= :width");
        }
        if (filter.thickness() != null) {
            values.put("thickness", filter.thickness().um());
            conditions.add("p.thickness_um >= :thickness");
        }
        if (filter.can() != null) {
            values.put("there", PieceState.THERE.stream().map(Enum::name).toList());
            conditions.add((filter.can() == PieceFilter.Can.NECK ? "p.fits_neck" : "p.fits_head")
                    + " = true and p.state in (:there)");
        }
        return new PieceTable.Where(String.join(" and ", conditions), values);
    }

    /** @param state the only one there is among them */
    private static String order(PieceFilter.Sort sort, @Nullable PieceState state) {
        return switch (sort) {
            case CODE -> "p.code_order";
            case LONGEST -> "p.length_um desc, p.code_order";
            case WIDEST -> "p.width_um desc, p.code_order";
            case THICKEST -> "p.thickness_um desc, p.code_order";
            case NEWEST -> "p.since desc, p.code_order";
            // Said with the state, the order is an index's own.
            case OLDEST -> (state == null ? "" : "p.state, ") + "p.since, p.code_order";
        };
    }
}
