package org.scarfwright.matching;

import java.util.List;
import java.util.Optional;
import org.scarfwright.rack.Piece;

/** Asks the rules whether a pinned neck can be made from its two pieces at all. */
final class PinTrial {
    private PinTrial() {}

    /** Why not, reading on: "K7M as the neck is 12.4 mm too short underlaid"; empty when it can. */
    static Optional<String> refusal(MatchInput.Line line, MatchInput input) {
        Hand.Pin pin = line.pin();
        if (pin == null) {
            return Optional.empty();
        }
        Optional<Piece> neck = input.piece(pin.neck());
        Optional<Piece> head = input.piece(pin.head());
        if (neck.isEmpty() || head.isEmpty()) {
            String gone = neck.isEmpty() ? pin.neck() : pin.head();
            return Optional.of(gone + " is "
                    + input.reserved().stream()
                            .filter(r -> r.piece().code().equals(gone))
                            .map(MatchInput.Reserved::words)
                            .findFirst()
                            .orElse("not free on the rack"));
        }
        ShopRules shop = ShopRules.of(input);
        List<Way> ways = Way.of(line.design());
        if (ways.isEmpty()) {
            return Way.impossible(line.design()).stream()
                    .findFirst()
                    .map(Verdict.Refused::reason)
                    .or(() -> Optional.of("no joint of this design can be made"));
        }
        String first = null;
        for (Way way : ways) {
            Optional<String> refused = refusal(way, neck.get(), head.get(), shop);
            if (refused.isEmpty()) {
                return Optional.empty();
            }
            first = first == null ? refused.get() : first;
        }
        return Optional.ofNullable(first);
    }

    private static Optional<String> refusal(Way way, Piece neck, Piece head, ShopRules shop) {
        List<Verdict.Refused> ofNeck = PartRules.refusals(Trial.of(way.neck(), neck, shop));
        if (!ofNeck.isEmpty()) {
            return Optional.of(neck.code() + " as the neck: " + ofNeck.get(0).reason());
        }
        List<Verdict.Refused> ofHead = PartRules.refusals(Trial.of(way.head(), head, shop));
        if (!ofHead.isEmpty()) {
            return Optional.of(head.code() + " as the head: " + ofHead.get(0).reason());
        }
        Optional<Verdict.Refused> pair =
                PairRules.firstRefusal(new PairTrial(way.neck().design(), neck, head, shop));
        if (pair.isPresent()) {
            return Optional.of(pair.get().reason());
        }
        return neck.code().equals(head.code()) && !NearestMisses.givesBoth(way, neck, shop)
                ? Optional.of(neck.code() + " gives the neck or the head, but has no room for both "
                        + way.arrangement().word())
                : Optional.empty();
    }
}
