package org.scarfwright.ledger.web;

import java.util.List;
import org.scarfwright.ledger.Act;
import org.scarfwright.ledger.ActWords;
import org.scarfwright.ledger.Balance;
import org.scarfwright.ledger.Ledger;
import org.scarfwright.ledger.Ledger.ActList;
import org.scarfwright.measure.Volume;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** What happened, and that it adds up. */
@Controller
class LedgerController {
    private static final int ON_PAGE = 50;

    private final Ledger ledger;

    LedgerController(Ledger ledger) {
        this.ledger = ledger;
    }

    /** A line of the balance; a volume is empty where there is none. */
    record Line(String kind, long acts, Volume in, Volume out) {}

    /** An act as a row. */
    record Row(Act act, String kind, boolean moved) {}

    @GetMapping("/ledger")
    ModelAndView show(
            @RequestParam(name = "piece", defaultValue = "") String piece,
            @RequestParam(name = "page", defaultValue = "1") String page) {
        ActList acts = ledger.acts(piece, number(page), ON_PAGE);
        Balance balance = ledger.balance();
        ModelAndView view = new ModelAndView("ledger/ledger");
        view.addObject("piece", piece.strip());
        view.addObject("acts", acts);
        view.addObject("rows", rows(acts));
        view.addObject("balance", balance);
        view.addObject(
                "lines",
                balance.lines().stream()
                        .map(l -> new Line(ActWords.kind(l.kind()), l.acts(), l.in(), l.out()))
                        .toList());
        return view;
    }

    private static List<Row> rows(ActList acts) {
        return acts.acts().stream()
                .map(a -> new Row(a, ActWords.kind(a.kind()), !a.change().isZero()))
                .toList();
    }

    /** A page that is no number is the first one: a mistyped address should still show the ledger. */
    private static int number(String page) {
        return page.matches("[1-9]\\d{0,6}") ? Integer.parseInt(page) : 1;
    }
}
