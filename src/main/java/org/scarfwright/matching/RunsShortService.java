package org.scarfwright.matching;

import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.scarfwright.matching.search.MatchSearch;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.NotFoundException;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;

@Service
class RunsShortService implements RunsShort {
    private final PlanService.Rooms rooms;
    private final PlanMaker maker;
    private final SearchSlot slot;
    private final TransactionTemplate transaction;
    private final Clock clock;
    private final Duration patience;

    RunsShortService(
            PlanService.Rooms rooms,
            MatchSearch search,
            SearchSlot slot,
            TransactionTemplate transaction,
            Clock clock,
            @Value("${scarfwright.match.patience}") Duration patience) {
        this.rooms = rooms;
        this.maker = new PlanMaker(search);
        this.slot = slot;
        this.transaction = transaction;
        this.clock = clock;
        this.patience = patience;
    }

    @Override
    public List<DesignName> designs() {
        return rooms.designs().all().stream()
                .map(d -> new DesignName(d.code(), d.name()))
                .toList();
    }

    @Override
    public Answer more(String code) {
        MatchInput input = Objects.requireNonNull(transaction.execute(s -> question(code)));
        if (!slot.takeWithin(patience)) {
            throw new ConflictException("A match is still running; ask again when it has ended.");
        }
        try {
            PlanMaker.Found found = maker.find(
                    input,
                    List.of(),
                    Duration.ofSeconds(SECONDS),
                    new MemoryGuard(input.settings().searchMemoryMb())::exceeded);
            Plan.Level filled = found.levels().get(0);
            int necks = found.made().size();
            return new Answer(
                    input.lines().get(0).design().code(),
                    necks,
                    necks == MOST || filled.value().compareTo(filled.bound()) == 0,
                    input.pieces().size(),
                    found.layouts().stream()
                            .map(Plan.PieceLayout::piece)
                            .sorted()
                            .toList());
        } finally {
            slot.leave();
        }
    }

    private MatchInput question(String code) {
        List<NeckDesign> all = rooms.designs().all();
        NeckDesign design = all.stream()
                .filter(d -> d.code().equalsIgnoreCase(code.strip()))
                .findFirst()
                .orElseThrow(() -> new NotFoundException(
                        "There is no design “" + (code.length() > 40 ? code.substring(0, 40) + "…" : code) + "”."));
        LocalDate today = LocalDate.now(clock);
        return new MatchInput(
                IsoWeek.of(today),
                List.of(new MatchInput.Line(
                        design.code(),
                        design,
                        IntStream.rangeClosed(1, MOST).boxed().toList(),
                        1)),
                all,
                rooms.rack().free(),
                rooms.shop().settings(),
                rooms.shop().saws(),
                today,
                WoodWords.of(rooms.woods().all()));
    }
}
