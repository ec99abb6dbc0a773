package org.scarfwright.ledger.web;

import java.util.List;
import org.scarfwright.web.Science;
import org.scarfwright.web.ScienceRow;
import org.scarfwright.web.ScienceSection;
import org.springframework.stereotype.Component;

/** Sources of the figures that say what became of the wood. */
@Component
class LedgerScience implements Science {
    private static final String OWN = "defined by this program";

    @Override
    public ScienceSection section() {
        return new ScienceSection(
                70,
                "Yield",
                "Volumes in whole cubic micrometres, from the entries that stand. P parts as sawn, R usable rests, I all that was "
                        + "taken from pieces: P, R, waste of every cause and the unexplained difference.",
                List.of(
                        ScienceRow.of("net-yield", "net yield", "P / (I − R)", OWN)
                                .in("ledger.YieldSums")
                                .provedBy("ledger.YieldContract", "a shop worked by hand; sums by the database"),
                        ScienceRow.of("recovery", "recovery", "(P + R) / I", OWN)
                                .in("ledger.YieldSums")
                                .provedBy("ledger.YieldContract", "a shop worked by hand"),
                        ScienceRow.of(
                                        "rescue",
                                        "rescue",
                                        "P of pieces that were set aside, short or narrow when the plan was made / P",
                                        OWN)
                                .in("ledger.YieldSums", "ledger.YieldService")
                                .provedBy("ledger.YieldPagesTest", "a plan on a piece that was set aside"),
                        ScienceRow.of(
                                        "shares-hundred",
                                        "shares that add up to 100.00 %",
                                        "each share rounded down to 0.01 %; the hundredths that are over go to the largest remainders",
                                        "the method of largest remainders, as it is used to give out seats by votes")
                                .in("measure.Apportionment", "ledger.YieldSums")
                                .provedBy(
                                        "measure.ApportionmentTest",
                                        "of all ways to share out the nearest, by trying them"),
                        ScienceRow.of(
                                        "cost-shares",
                                        "cost of a part, of a usable rest and of what is left",
                                        "c · v / Σv in whole cents, rounded down; the cents that are over go to the largest remainders."
                                                + " c cost of the piece; v the volumes of parts, usable rests and what is left, or of the"
                                                + " waste where there is nothing else",
                                        "the method of largest remainders; that waste bears no cost is a choice of this program")
                                .in("rack.CostShares", "rack.JdbcCutting", "measure.Apportionment")
                                .provedBy("rack.CostSharesTest", "worked by hand; exact fractions")
                                .provedBy("ledger.CutPagesTest", "the shares of a cut add up to what the piece cost"),
                        ScienceRow.of(
                                        "moving-median",
                                        "moving median",
                                        "the middle one of the last five, or the mean of the middle two",
                                        "NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.1, from memory; five is a choice of this"
                                                + " program")
                                .in("ledger.YieldService")
                                .provedBy("ledger.YieldMedianTest", "the median of a general library")));
    }
}
