package org.scarfwright.rack;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.random.RandomGenerator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.ImportResult.Outcome;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.CsvTable;
import org.scarfwright.web.FieldError;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Reads a rack file, all or nothing, so that the same file again adds nothing. The format is described in
 * {@code src/docs/rack-file.md}.
 */
@Service
public class RackImport {
    /** Rows a file may have. */
    public static final int MOST_ROWS = 20_000;

    /** Bytes a file may have. */
    public static final int MOST_BYTES = 32 * 1024 * 1024;

    static final CsvTable.Limits LIMITS = new CsvTable.Limits(MOST_BYTES, MOST_ROWS, 2_000);
    static final CsvTable.Columns COLUMNS = new CsvTable.Columns(
            List.of("wood", "length", "width", "thickness"),
            Stream.of(PieceField.values())
                    .map(PieceField::column)
                    .filter(c -> !Set.of("wood", "length", "width", "thickness").contains(c))
                    .toList());

    private final PieceTable table;
    private final SpeciesCatalog woods;
    private final ApplicationEventPublisher events;
    private final Clock clock;
    private final RandomGenerator random = new SecureRandom();

    RackImport(PieceTable table, SpeciesCatalog woods, ApplicationEventPublisher events, Clock clock) {
        this.table = table;
        this.woods = woods;
        this.events = events;
        this.clock = clock;
    }

    /**
     * Says what a file would become and saves nothing.
     *
     * @throws org.scarfwright.web.InvalidInputException when it is no table of pieces at all
     */
    @Transactional(readOnly = true)
    public ImportResult preview(byte[] file) {
        return examine(CsvTable.readWithErrors(file, COLUMNS, LIMITS)).result(false);
    }

    /** The same for text as it was pasted. */
    @Transactional(readOnly = true)
    public ImportResult preview(String text) {
        return examine(CsvTable.readWithErrors(text, COLUMNS, LIMITS)).result(false);
    }

    /**
     * Saves every row that is new, unless anything is wrong: then nothing is saved.
     *
     * @throws org.scarfwright.web.InvalidInputException when it is no table of pieces at all
     */
    @Transactional
    public ImportResult save(byte[] file) {
        return save(CsvTable.readWithErrors(file, COLUMNS, LIMITS));
    }

    /** The same for text as it was pasted. */
    @Transactional
    public ImportResult save(String text) {
        return save(CsvTable.readWithErrors(text, COLUMNS, LIMITS));
    }

    private ImportResult save(CsvTable file) {
        Examination examination = examine(file);
        if (!examination.errors.isEmpty()) {
            return examination.result(false);
        }
        List<Line> fresh =
                examination.lines.stream().filter(l -> l.outcome == Outcome.NEW).toList();
        if (fresh.isEmpty()) {
            return examination.result(true);
        }
        giveCodes(fresh);
        LocalDate today = LocalDate.now(clock);
        Set<String> lots;
        try {
            lots = table.insert(fresh.stream()
                    .map(l -> new PieceTable.NewPiece(
                            Objects.requireNonNull(l.code), l.importKey, Objects.requireNonNull(l.facts), today))
                    .toList());
        } catch (DuplicateKeyException e) {
            throw new ConflictException("Another person changed the rack at the same moment; import again.", e);
        }
        events.publishEvent(new PiecesChanged(
                Doing.of(PieceChanged.Kind.IMPORTED),
                fresh.stream()
                        .map(l -> new PieceChanged(
                                PieceChanged.Kind.IMPORTED,
                                Objects.requireNonNull(l.code),
                                Volume.ZERO,
                                volume(Objects.requireNonNull(l.facts)),
                                null,
                                "Imported from row " + l.number + " of a rack file."))
                        .toList(),
                List.of(),
                lots));
        return examination.result(true);
    }

    private static Volume volume(PieceFacts facts) {
        return Volume.of(
                facts.length().length(),
                facts.width().length(),
                facts.thickness().length());
    }

    private void giveCodes(List<Line> fresh) {
        List<Line> without = fresh.stream().filter(l -> l.code == null).toList();
        if (without.isEmpty()) {
            return;
        }
        Set<String> given =
                fresh.stream().map(l -> l.code).filter(Objects::nonNull).collect(Collectors.toSet());
        long pieces = table.count(new PieceTable.Where("1 = 1", Map.of()));
        Set<String> taken = new HashSet<>(given);
        int next = 0;
        // Codes are asked for in one go and checked in one query; a few that are taken already are asked for again.
        while (next < without.size()) {
            List<String> made = PieceCodes.make(without.size() - next, pieces + given.size(), taken::contains, random);
            Set<String> existing = table.existing(made);
            for (String code : made) {
                taken.add(code);
                if (!existing.contains(code)) {
                    without.get(next).code = code;
                    next++;
                }
            }
        }
    }

    private Examination examine(CsvTable file) {
        PieceReader reader = new PieceReader(new WoodNames(woods.all()), clock);
        Examination examination = new Examination(file);
        Map<String, Integer> rowOfCode = new HashMap<>();
        for (CsvTable.Row row : file.rows()) {
            Line line = new Line(row);
            examination.lines.add(line);
            if (!row.isWhole()) {
                continue;
            }
            PieceReader.Reading reading = reader.read(line.cells, LengthUnit.MM, null);
            reading.errors().forEach(e -> examination.wrong(line, e.field(), e.value(), e.message()));
            String code = reading.code();
            Integer earlier = code == null ? null : rowOfCode.putIfAbsent(code, row.number());
            if (earlier != null) {
                examination.wrong(
                        line,
                        PieceField.CODE,
                        "“" + code + "” stands in row " + earlier
                                + " too; a code names one piece, so change one of them or take it out");
            }
            line.code = code;
            line.facts = reading.facts();
        }
        examineCodes(examination);
        examineRepetitions(examination);
        examineLots(examination);
        examination.lines.stream()
                .filter(l -> l.outcome == null)
                .forEach(l -> l.outcome = l.facts == null ? Outcome.REFUSED : Outcome.NEW);
        return examination;
    }

    /** A lot is ready on one day: the same in every new row, and the same as on the rack. */
    private void examineLots(Examination examination) {
        Map<String, Line> first = new LinkedHashMap<>();
        for (Line line : examination.sound()) {
            PieceFacts facts = line.facts();
            if (facts.lot() == null || facts.lotReadyOn() == null) {
                continue;
            }
            Line earlier = first.putIfAbsent(PieceTable.key(facts.lot()), line);
            if (earlier != null && !Objects.equals(earlier.facts().lotReadyOn(), facts.lotReadyOn())) {
                examination.wrong(
                        line,
                        PieceField.LOT_READY_ON,
                        "“" + facts.lotReadyOn() + "” is not the day row " + earlier.number + " gives for lot “"
                                + facts.lot() + "”, " + earlier.facts().lotReadyOn());
            }
        }
        Map<String, @Nullable LocalDate> onRack = table.lotsReady(first.keySet());
        first.forEach((key, line) -> {
            LocalDate ready = onRack.get(key);
            if (ready != null && !ready.equals(line.facts().lotReadyOn()) && line.outcome == null) {
                examination.wrong(
                        line,
                        PieceField.LOT_READY_ON,
                        "“" + line.facts().lotReadyOn() + "” is not the day the rack has for lot “"
                                + line.facts().lot() + "”, " + ready + "; leave the cell empty or write that day");
            }
        });
    }

    private void examineCodes(Examination examination) {
        Map<String, Line> coded = new LinkedHashMap<>();
        examination.sound().stream()
                .filter(l -> l.code != null)
                .forEach(l -> coded.put(Objects.requireNonNull(l.code), l));
        List<Piece> there = table.loadCodes(coded.keySet());
        List<Long> ids = there.stream().map(Piece::id).toList();
        Map<Long, List<Warp>> warps = table.warpReadings(ids);
        Map<Long, List<MoistureReading>> moistures = table.moistureReadings(ids);
        for (Piece piece : there) {
            Line line = Objects.requireNonNull(coded.get(piece.code()));
            List<String> differences = new ImportComparison(
                            piece,
                            warps.getOrDefault(piece.id(), List.of()),
                            moistures.getOrDefault(piece.id(), List.of()))
                    .differences(line.cells, line.facts());
            if (differences.isEmpty()) {
                line.outcome = Outcome.UNCHANGED;
                line.remark = kept(piece, line.facts());
            } else {
                examination.wrong(
                        line,
                        PieceField.CODE,
                        "“" + piece.code() + "” is on the rack already and differs: " + String.join("; ", differences)
                                + ". Edit that piece, or give this row another code");
            }
        }
    }

    private static String kept(Piece piece, PieceFacts facts) {
        String place = facts.place();
        boolean moved = place != null
                && (piece.place() == null || !PieceTable.key(place).equals(PieceTable.key(piece.place())));
        return moved
                ? "The rack keeps its own place for it: " + (piece.place() == null ? "none" : piece.place()) + "."
                : "";
    }

    private void examineRepetitions(Examination examination) {
        Map<String, Integer> seen = new HashMap<>();
        Map<String, Line> keyed = new LinkedHashMap<>();
        examination.sound().stream().filter(l -> l.code == null).forEach(line -> {
            String figures = figures(line.cells, line.facts());
            int repetition = seen.merge(figures, 1, Integer::sum);
            String key = sha256(figures) + "-" + repetition;
            line.importKey = key;
            keyed.put(key, line);
        });
        table.codesByImportKey(keyed.keySet()).forEach((key, code) -> {
            Line line = Objects.requireNonNull(keyed.get(key));
            line.code = code;
            line.outcome = Outcome.UNCHANGED;
            line.remark = "Imported before as " + code + ".";
        });
    }

    /** Everything that makes one piece differ from another, written one way; not its place and its note. */
    private static String figures(PieceCells cells, PieceFacts f) {
        boolean dated =
                cells.has(PieceField.MEASURED_ON) || cells.has(PieceField.MOISTURE_ON) || cells.has(PieceField.WARP_ON);
        MoistureReading moisture = f.moisture();
        Warp warp = f.warp();
        List<Object> figures = new ArrayList<>();
        figures.add(PieceWords.wood(f.wood()) + PieceWords.lamination(f.wood()));
        figures.add(f.length().length());
        figures.add(f.width().length());
        figures.add(f.thickness().length());
        figures.add(f.grain());
        figures.add(String.valueOf(f.grainSlope()));
        figures.add(moisture == null ? "" : moisture.content() + " " + moisture.meter());
        figures.add(dated && moisture != null ? moisture.readOn() : "");
        figures.add(warp == null ? "" : warp.bow() + " " + warp.crook() + " " + warp.cup() + " " + warp.twist());
        if (warp != null && !warp.middle().isNone()) {
            figures.add(PieceWords.warp(warp));
        }
        figures.add(dated && warp != null ? String.valueOf(warp.readOn()) : "");
        figures.add(f.trimLeft());
        figures.add(f.trimRight());
        figures.add(PieceWords.defects(f.defects(), f.width().length()));
        figures.add(f.setAside());
        figures.add(f.neckAllowed());
        figures.add(f.lot() == null ? "" : PieceTable.key(f.lot()));
        figures.add(f.cost() == null ? "" : f.cost());
        return figures.stream().map(String::valueOf).collect(Collectors.joining("\n"));
    }

    private static String sha256(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** A row while it is being examined. */
    private static final class Line {
        final int number;
        final CsvTable.Row row;
        final PieceCells cells;

        @Nullable
        String code;

        @Nullable
        String importKey;

        @Nullable
        PieceFacts facts;

        @Nullable
        Outcome outcome;

        String remark = "";

        Line(CsvTable.Row row) {
            this.number = row.number();
            this.row = row;
            this.cells = PieceCells.of(row::cell);
        }

        PieceFacts facts() {
            return Objects.requireNonNull(facts);
        }
    }

    /** All rows of a file and what is wrong with them. */
    private static final class Examination {
        final List<Line> lines = new ArrayList<>();
        final List<FieldError> errors;

        Examination(CsvTable file) {
            errors = new ArrayList<>(file.errors());
        }

        void wrong(Line line, PieceField field, String message) {
            wrong(line, field, line.cells.get(field), message);
        }

        void wrong(Line line, PieceField field, String value, String message) {
            line.outcome = Outcome.REFUSED;
            errors.add(line.row.error(field.column(), value, message));
        }

        /** Rows nothing was found wrong with so far. */
        List<Line> sound() {
            return lines.stream()
                    .filter(l -> l.facts != null && l.outcome == null)
                    .toList();
        }

        ImportResult result(boolean saved) {
            return new ImportResult(
                    lines.stream()
                            .map(l -> new ImportResult.Row(
                                    l.number,
                                    Objects.requireNonNull(l.outcome),
                                    l.outcome == Outcome.REFUSED ? null : l.code,
                                    l.outcome == Outcome.REFUSED ? null : l.facts,
                                    l.remark))
                            .toList(),
                    errors,
                    saved);
        }
    }
}
