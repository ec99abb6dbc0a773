package org.scarfwright.matching;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceUses;
import org.scarfwright.shop.Saw;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Asks the rules of plans about one piece at a time, before any plan is made. */
@Service
class RackUses implements PieceUses {
    /** Named in the key, so that a change of the rules themselves makes old answers stale. */
    private static final String RULES = "1";

    private final PlanService.Rooms rooms;
    private final JdbcPlans plans;
    private final Clock clock;

    RackUses(PlanService.Rooms rooms, JdbcPlans plans, Clock clock) {
        this.rooms = rooms;
        this.plans = plans;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Use> coming(Piece piece) {
        LocalDate today = LocalDate.now(clock);
        Map<String, NeckDesign> designs =
                rooms.designs().all().stream().collect(Collectors.toMap(NeckDesign::code, Function.identity()));
        WoodWords woods = WoodWords.of(rooms.woods().all());
        List<Use> uses = new ArrayList<>();
        for (int w = 0; w < WEEKS; w++) {
            IsoWeek week = IsoWeek.of(today.plusWeeks(w));
            LocalDate day = week.monday().isAfter(today) ? week.monday() : today;
            ShopRules shop = new ShopRules(rooms.shop().settings(), rooms.shop().saws(), day, woods);
            open(week)
                    .forEach((code, orders) -> Optional.ofNullable(designs.get(code))
                            .ifPresent(design ->
                                    uses.add(use(week, design, orders, new Asking(piece, shop, PartRules.ALL)))));
        }
        return List.copyOf(uses);
    }

    /** Orders with necks no accepted plan has, by design, in the order plans fill them. */
    private Map<String, List<Asked>> open(IsoWeek week) {
        List<NeckOrder> orders = rooms.orders().inWeek(week);
        Map<String, Integer> made =
                plans.acceptedCounts(orders.stream().map(NeckOrder::code).toList());
        Map<String, List<Asked>> open = new LinkedHashMap<>();
        for (NeckOrder order : orders) {
            int left = order.quantity() - made.getOrDefault(order.code(), 0);
            if (left > 0) {
                open.computeIfAbsent(order.designCode(), c -> new ArrayList<>())
                        .add(new Asked(order.code(), order.due(), left));
            }
        }
        return open;
    }

    private static Use use(IsoWeek week, NeckDesign design, List<Asked> orders, Asking asking) {
        List<Way> ways = Way.of(design);
        Answer neck = asking.answer(design, ways, Role.NECK);
        Answer head = asking.answer(design, ways, Role.HEAD);
        if (design.match() == MatchRule.SAME_PIECE && neck.fits() && head.fits() && !asking.givesBoth(ways)) {
            Answer both =
                    new Answer(false, "it gives the neck or the head, and this design wants both from one piece", null);
            return new Use(week.toString(), design.code(), orders, both, both);
        }
        return new Use(week.toString(), design.code(), orders, neck, head);
    }

    @Override
    @Transactional(readOnly = true)
    public List<DesignPart> designs(Piece piece) {
        ShopRules shop = shop();
        Asking asking = new Asking(piece, shop, PartRules.OF_WOOD);
        List<DesignPart> parts = new ArrayList<>();
        for (NeckDesign design : rooms.designs().all()) {
            List<Way> ways = Way.of(design);
            for (Role role : List.of(Role.NECK, Role.HEAD)) {
                Length thickness = (role == Role.NECK ? design.neckThickness() : design.headThickness()).length();
                parts.add(new DesignPart(
                        design.code(),
                        role == Role.NECK,
                        thickness,
                        ways.stream()
                                .map(w -> part(w, role).width())
                                .min(Comparator.naturalOrder())
                                .orElse(Length.ZERO),
                        needed(ways, role, shop.saws().get(0)),
                        asking.answer(design, ways, role)));
            }
        }
        return List.copyOf(parts);
    }

    private static List<Needed> needed(List<Way> ways, Role role, Saw saw) {
        List<Needed> needed = new ArrayList<>();
        for (Arrangement arrangement : Arrangement.values()) {
            ways.stream()
                    .filter(w -> w.arrangement() == arrangement)
                    .map(w -> part(w, role))
                    .map(n -> n.section(saw, n.thickness()))
                    .min(Comparator.naturalOrder())
                    .ifPresent(length -> needed.add(new Needed(arrangement.word(), length)));
        }
        return needed;
    }

    @Override
    @Transactional(readOnly = true)
    public Standard standard() {
        List<NeckDesign> designs = rooms.designs().all();
        ShopRules shop = shop();
        List<Way> ways = designs.stream().flatMap(d -> Way.of(d).stream()).toList();
        String key = sha256(RULES + designs + shop.settings() + shop.saws());
        return new Standard() {
            @Override
            public String key() {
                return key;
            }

            @Override
            public Fitness of(Piece piece) {
                Asking asking = new Asking(piece, shop, PartRules.OF_WOOD);
                return new Fitness(asking.fitsAny(ways, Role.NECK), asking.fitsAny(ways, Role.HEAD));
            }
        };
    }

    private ShopRules shop() {
        return new ShopRules(
                rooms.shop().settings(),
                rooms.shop().saws(),
                LocalDate.now(clock),
                WoodWords.of(rooms.woods().all()));
    }

    private static PartNeed part(Way way, Role role) {
        return role == Role.NECK ? way.neck() : way.head();
    }

    private static String sha256(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** One piece before some of the rules. */
    private record Asking(Piece piece, ShopRules shop, List<PartRule> rules) {

        boolean fitsAny(List<Way> ways, Role role) {
            return ways.stream().anyMatch(w -> fits(trial(w, role)));
        }

        boolean givesBoth(List<Way> ways) {
            return ways.stream().anyMatch(w -> NearestMisses.givesBoth(w, piece, shop));
        }

        Answer answer(NeckDesign design, List<Way> ways, Role role) {
            if (ways.isEmpty()) {
                return new Answer(
                        false,
                        Way.impossible(design).stream()
                                .findFirst()
                                .map(r -> "no joint of this design can be made: " + r.reason())
                                .orElse("this design has no joint"),
                        null);
            }
            List<String> fitting = new ArrayList<>();
            for (Arrangement arrangement : Arrangement.values()) {
                ways.stream()
                        .filter(w -> w.arrangement() == arrangement)
                        .map(w -> trial(w, role))
                        .filter(this::fits)
                        .findFirst()
                        .ifPresent(t -> fitting.add(t.need().arrangement().word() + " at "
                                + t.need().angle() + ", taking " + Words.mm(t.section())));
            }
            return fitting.isEmpty()
                    ? closest(ways, role)
                    : new Answer(true, "fits " + String.join("; ", fitting), null);
        }

        /** The way that gets furthest down the rules; among equals the one that falls short by the least. */
        private Answer closest(List<Way> ways, Role role) {
            int furthest = -1;
            Verdict.Refused told = null;
            for (Way way : ways) {
                Trial trial = trial(way, role);
                int at = firstRefusing(trial);
                Verdict.Refused refused = rules.get(at).why(trial);
                if (told == null || at > furthest || (at == furthest && shortBy(refused) < shortBy(told))) {
                    furthest = at;
                    told = refused;
                }
            }
            if (told == null) {
                throw new IllegalStateException("asked why a piece does not fit where there is no way to fit");
            }
            return new Answer(false, told.reason(), told.shortBy());
        }

        private int firstRefusing(Trial trial) {
            for (int i = 0; i < rules.size(); i++) {
                if (!rules.get(i).fits(trial)) {
                    return i;
                }
            }
            throw new IllegalStateException("asked why a piece that fits does not");
        }

        private static long shortBy(Verdict.Refused refused) {
            Length by = refused.shortBy();
            return by == null ? Long.MAX_VALUE : by.um();
        }

        private Trial trial(Way way, Role role) {
            return Trial.of(part(way, role), piece, shop);
        }

        private boolean fits(Trial trial) {
            for (PartRule rule : rules) {
                if (!rule.fits(trial)) {
                    return false;
                }
            }
            return true;
        }
    }
}
