package org.scarfwright.matching.web;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.scarfwright.matching.MatchRuns;
import org.scarfwright.necks.Designs;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceFilter;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceStrip;
import org.scarfwright.rack.Pieces;
import org.scarfwright.shop.ShopStart;
import org.scarfwright.web.Strip;
import org.scarfwright.web.StripDrawing;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The first page: what to do next. */
@Controller
class TodayController {
    private static final int WAITING_SHOWN = 5;

    private final ShopStart start;
    private final Pieces pieces;
    private final Designs designs;
    private final WeekStandings standings;
    private final MatchRuns runs;
    private final Clock clock;

    TodayController(
            ShopStart start, Pieces pieces, Designs designs, WeekStandings standings, MatchRuns runs, Clock clock) {
        this.start = start;
        this.pieces = pieces;
        this.designs = designs;
        this.standings = standings;
        this.runs = runs;
        this.clock = clock;
    }

    /** A piece that has waited, and how it looks. */
    record Waiting(String code, LocalDate since, StripDrawing drawing) {}

    @GetMapping("/")
    String today(Model model) {
        if (!start.isStarted()) {
            return "redirect:/start";
        }
        Map<PieceState, Pieces.Stock> stock = pieces.stock();
        long free = Objects.requireNonNull(stock.get(PieceState.ON_RACK)).pieces();
        long reserved = Objects.requireNonNull(stock.get(PieceState.RESERVED)).pieces();
        WeekStanding standing = standings.of(standings.weekAtHand());
        if (standing.step() == WeekStanding.Step.MATCH) {
            runs.warmUp();
        }
        model.addAttribute("today", LocalDate.now(clock));
        model.addAttribute("free", free);
        model.addAttribute("reserved", reserved);
        model.addAttribute("volume", Pieces.volumeOf(stock));
        model.addAttribute("standing", standing);
        model.addAttribute("late", standings.lateBefore(standing.week()));
        model.addAttribute("waiting", waiting());
        model.addAttribute("step", step(free + reserved, standing));
        return "matching/today";
    }

    private String step(long wood, WeekStanding standing) {
        if (wood == 0) {
            return "WOOD";
        }
        if (designs.all().isEmpty()) {
            return "DESIGN";
        }
        return standing.step().name();
    }

    private List<Waiting> waiting() {
        PieceFilter free = new PieceFilter("", null, PieceState.ON_RACK, null, null, null, null);
        List<Piece> oldest =
                pieces.list(free, PieceFilter.Sort.OLDEST, 1, WAITING_SHOWN).pieces();
        StripDrawing.Scale scale =
                StripDrawing.Scale.of(oldest.stream().map(PieceStrip::of).toList());
        return oldest.stream()
                .map(p -> {
                    Strip strip = PieceStrip.of(p);
                    return new Waiting(p.code(), p.since(), StripDrawing.row(strip, scale));
                })
                .toList();
    }
}
