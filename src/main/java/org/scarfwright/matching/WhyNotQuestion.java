package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.rack.Piece;

/** Asks the rules about one piece for one order of a plan, and sets it beside the piece the plan chose. */
final class WhyNotQuestion {
    private final Plan plan;
    private final MatchInput input;
    private final MatchInput.Line line;
    private final Piece piece;
    private final ShopRules shop;
    private final ByHand byHand;
    private final BookValue value;

    /**
     * @param input the shop as it is now; its pieces are those the plan cuts
     * @param line the order, with all its necks
     * @param piece in whatever state
     */
    WhyNotQuestion(Plan plan, MatchInput input, MatchInput.Line line, Piece piece) {
        this.plan = plan;
        this.input = input;
        this.line = line;
        this.piece = piece;
        shop = ShopRules.of(input);
        byHand = new ByHand(input.hands());
        value = new BookValue(StockStandards.of(input.designs(), shop), input.settings(), input.day());
    }

    WhyNot answer() {
        List<WhyNot.Answer> answers = new ArrayList<>();
        for (Role role : Role.values()) {
            for (Way way : Way.of(line.design())) {
                answers.add(answer(way, role));
            }
        }
        return new WhyNot(line.order(), piece.code(), answers);
    }

    private WhyNot.Answer answer(Way way, Role role) {
        PartNeed need = role == Role.NECK ? way.neck() : way.head();
        Trial trial = Trial.of(need, piece, shop);
        String as = piece.code() + " as the " + Words.role(role);
        Optional<String> decided = byHand.refusal(line, role, piece.code());
        if (decided.isPresent()) {
            return refused(way, role, new Verdict.Refused(NearestMisses.BY_HAND, decided.get(), null), as);
        }
        String holder = held();
        if (holder != null) {
            return refused(way, role, new Verdict.Refused(new FreeRule().name(), holder, null), as);
        }
        Optional<Verdict.Refused> first = PartRules.ALL.stream()
                .filter(rule -> !(rule instanceof FreeRule && usedHere()))
                .filter(rule -> !rule.fits(trial))
                .findFirst()
                .map(rule -> rule.why(trial));
        if (first.isPresent()) {
            return refused(way, role, first.get(), as);
        }
        String fits = piece.code() + " fits as the " + Words.role(role) + " "
                + way.arrangement().word() + " at " + way.angle();
        return new WhyNot.Answer(
                Words.role(role), way.arrangement(), way.angle(), null, null, fits + standing(role, need) + ".");
    }

    private static WhyNot.Answer refused(Way way, Role role, Verdict.Refused refused, String as) {
        return new WhyNot.Answer(
                Words.role(role),
                way.arrangement(),
                way.angle(),
                refused.rule(),
                refused.shortBy(),
                as + " " + way.arrangement().word() + " at " + way.angle() + ": " + refused.reason() + ".");
    }

    private boolean usedHere() {
        return plan.state() == Plan.State.ACCEPTED
                && plan.layouts().stream().anyMatch(l -> l.piece().equals(piece.code()));
    }

    /** Another plan has it. */
    private @Nullable String held() {
        return input.reserved().stream()
                .filter(r -> r.piece().code().equals(piece.code()) && !usedHere())
                .map(MatchInput.Reserved::words)
                .findFirst()
                .orElse(null);
    }

    /** What the plan does instead; reads on from: K7M fits as the neck underlaid at 10°. */
    private String standing(Role role, PartNeed need) {
        TreeSet<String> users = new TreeSet<>();
        for (Plan.Pairing p : plan.pairings()) {
            if (p.neck().piece().equals(piece.code()) || p.head().piece().equals(piece.code())) {
                users.add(p.order());
            }
        }
        if (users.contains(line.order())) {
            return ", and this plan cuts it for this order";
        }
        if (!users.isEmpty()) {
            return ", but this plan cuts it for " + Words.list(List.copyOf(users));
        }
        Plan.Pairing made = plan.pairings().stream()
                .filter(p -> p.order().equals(line.order()))
                .findFirst()
                .orElse(null);
        if (made == null) {
            return ", but no " + (role == Role.NECK ? "head" : "neck") + " is left to go with it";
        }
        return beside(role, need, made);
    }

    private String beside(Role role, PartNeed need, Plan.Pairing made) {
        Optional<Piece> chosen = input.piece((role == Role.NECK ? made.neck() : made.head()).piece());
        Optional<Piece> partner = input.piece((role == Role.NECK ? made.head() : made.neck()).piece());
        if (partner.isPresent()) {
            PairTrial pair = role == Role.NECK
                    ? new PairTrial(line.design(), piece, partner.get(), shop)
                    : new PairTrial(line.design(), partner.get(), piece, shop);
            Optional<Verdict.Refused> refused = PairRules.firstRefusal(pair);
            if (refused.isPresent()) {
                return ", but not beside " + partner.get().code() + ": "
                        + refused.get().reason();
            }
        }
        Optional<LoneCost> here = LoneCost.of(need, piece, shop, value);
        Optional<LoneCost> there = chosen.flatMap(c -> LoneCost.of(need, c, shop, value));
        if (here.isEmpty() || there.isEmpty()) {
            return "";
        }
        String currency = input.settings().currency();
        boolean cheaper = here.get().cents() < there.get().cents();
        String whole = !cheaper
                ? ""
                : plan.status() == Plan.Status.PROVED
                        ? "; what the whole plan spends is proved least all the same"
                        : "; the search stopped before it had tried everything";
        return ". By itself it would spend " + here.get().spends(currency) + ", and "
                + there.get().piece().code() + " spends " + there.get().spends(currency) + ": "
                + here.get().moreThan(there.get(), currency) + whole;
    }
}
