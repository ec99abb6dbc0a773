package org.scarfwright.ledger;

import java.math.BigInteger;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.flywaydb.core.Flyway;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.ledger.StoredEntry.StoredAct;
import org.scarfwright.ledger.StoredEntry.StoredOutcome;
import org.scarfwright.matching.BenchPlan;
import org.scarfwright.matching.Plan;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Volume;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.BenchPiece;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceState;

/**
 * Fills an empty shop with five years of invented work: pieces bought in lots, measured, moved, reserved by a plan every week and
 * cut with outcomes that close, rests among them, a fifth of all pieces on the rack in the end. Seeded, so that the same arguments
 * give the same shop but for its days, which end today. The entries stand in the program's own chain; whether they do is for
 * the program's own check to say.
 *
 * <p>Arguments: {@code pieces=100000 acts=1000000 seed=1 url=jdbc:h2:file:... user= password=}. The database must be new.
 */
public final class LargeShop {
    private static final int WEEKS = 260;
    private static final int PLANNED_NECKS = 30;
    private static final long MM = 1_000;
    private static final List<String> WOODS = List.of(
            "maple_sugar", "walnut_black", "cherry_black", "ash_white", "sapele", "wenge", "mahogany_african", "beech");
    private static final List<String> PEOPLE = List.of("Ada", "Ben", "Cleo", "Dag", "Eve");
    private static final List<String> STEPS =
            List.of("FLATTEN", "CUT", "CUT", "TRUE", "TRUE", "FIT", "GLUE", "UNCLAMP", "SQUARE_UP");
    private static final List<String> ON =
            List.of("NECK", "NECK", "HEAD", "NECK", "HEAD", "BOTH", "BOTH", "BOTH", "BOTH");

    private final ShopRows rows;
    private final Random random;
    private final int pieceCount;
    private final int actCount;
    private final LocalDate monday;
    private final List<String> codes;
    private final List<BenchPiece> all = new ArrayList<>();
    private final List<BenchPiece> rack = new ArrayList<>();
    private long readings;
    private long steps;
    private Instant now = Instant.EPOCH;

    private LargeShop(ShopRows rows, Map<String, String> asked, LocalDate today) {
        this.rows = rows;
        this.pieceCount = Integer.parseInt(asked.getOrDefault("pieces", "10000"));
        this.actCount = Integer.parseInt(asked.getOrDefault("acts", "100000"));
        this.random = new Random(Long.parseLong(asked.getOrDefault("seed", "1")));
        this.monday = today.with(DayOfWeek.MONDAY).minusWeeks(WEEKS - 1L);
        this.codes = BenchPiece.codes(pieceCount, random);
    }

    public static void main(String[] args) throws SQLException {
        Map<String, String> asked = new LinkedHashMap<>();
        for (String arg : args) {
            asked.put(arg.substring(0, arg.indexOf('=')), arg.substring(arg.indexOf('=') + 1));
        }
        String url = asked.get("url");
        if (url == null) {
            throw new IllegalArgumentException(
                    "url is missing; write for example url=jdbc:h2:file:./target/large/scarfwright;MODE=PostgreSQL");
        }
        String user = asked.getOrDefault("user", "");
        String password = asked.getOrDefault("password", "");
        long begun = System.nanoTime();
        Flyway.configure()
                .dataSource(url, user, password)
                .locations("classpath:db/migration")
                .load()
                .migrate();
        try (Connection connection = DriverManager.getConnection(url, user, password)) {
            connection.setAutoCommit(false);
            ShopRows rows = new ShopRows(connection);
            LargeShop shop = new LargeShop(rows, asked, LocalDate.now(ZoneOffset.UTC));
            shop.fill();
            System.out.println(shop.all.size() + " pieces, " + shop.rack.size() + " on the rack, " + rows.entries()
                    + " entries, " + rows.acts() + " acts, " + rows.outcomes() + " outcomes, " + shop.steps
                    + " work steps in "
                    + Duration.ofNanos(System.nanoTime() - begun).toSeconds() + " s");
        }
    }

    private void fill() throws SQLException {
        rows.started(monday);
        for (int i = 1; i <= 40; i++) {
            rows.row("place", "name_key, name", "BAY " + i, "Bay " + i);
        }
        for (int i = 1; i <= 12; i++) {
            design(i);
        }
        rows.flush();
        for (int week = 0; week < WEEKS; week++) {
            new Week(week).work();
        }
        pieces();
        rows.end();
        for (String table : List.of("neck_design", "neck_order", "plan", "piece", "moisture_reading")) {
            rows.run("alter table " + table + " alter column id restart with 1000000000");
        }
        rows.flush();
    }

    private void design(int i) throws SQLException {
        rows.row(
                "neck_design",
                "id, code, name, neck_length_um, neck_length_typed, nut_width_um, nut_width_typed, heel_width_um,"
                        + " heel_width_typed, neck_thickness_um, neck_thickness_typed, head_length_um, head_length_typed,"
                        + " head_width_um, head_width_typed, head_thickness_um, head_thickness_typed, finish, match_rule,"
                        + " lines_meet, wings_allowed, end_allowance_um, end_allowance_typed, side_allowance_um,"
                        + " side_allowance_typed",
                (long) i,
                "D-" + i,
                "Design " + i,
                (440 + i) * MM,
                (440 + i) + " mm",
                43 * MM,
                "43 mm",
                56 * MM,
                "56 mm",
                20 * MM,
                "20 mm",
                180 * MM,
                "180 mm",
                60 * MM,
                "60 mm",
                15 * MM,
                "15 mm",
                "CLEAR",
                "ANY",
                false,
                true,
                5 * MM,
                "5 mm",
                2 * MM,
                "2 mm");
        rows.row("neck_design_angle", "design_id, angle_mdeg", (long) i, 13_000);
        rows.row("neck_design_arrangement", "design_id, arrangement", (long) i, "UNDERLAID");
        rows.row("neck_design_arrangement", "design_id, arrangement", (long) i, "OVERLAID");
    }

    private long between(int first, int last) {
        return first + random.nextInt(last - first + 1);
    }

    private String person() {
        return PEOPLE.get(Math.min(random.nextInt(PEOPLE.size()), random.nextInt(PEOPLE.size())));
    }

    private static StoredAct act(
            int position, PieceChanged.Kind kind, BenchPiece piece, BigInteger before, String detail) {
        return act(position, kind, piece, before, null, detail);
    }

    private static StoredAct act(
            int position,
            PieceChanged.Kind kind,
            BenchPiece piece,
            BigInteger before,
            @Nullable Long plan,
            String detail) {
        return new StoredAct(
                position, kind.name(), piece.code, before, piece.volumeThere().um3(), plan, detail, piece.document());
    }

    private void toRack(BenchPiece piece) {
        piece.index = rack.size();
        rack.add(piece);
    }

    private void offRack(BenchPiece piece) {
        BenchPiece last = rack.remove(rack.size() - 1);
        if (last != piece) {
            rack.set(piece.index, last);
            last.index = piece.index;
        }
        piece.index = -1;
    }

    /** A neck some parts of which are cut. */
    private static final class Neck {
        private final String order;
        private final int number;
        private final String design;
        private Plan.@Nullable Part neck;
        private Plan.@Nullable Part head;

        Neck(String order, int number, String design) {
            this.order = order;
            this.number = number;
            this.design = design;
        }

        boolean whole() {
            return neck != null && head != null;
        }
    }

    /** Five days of work. */
    private final class Week {
        private final int number;
        private final LocalDate first;
        private final IsoWeek iso;
        private final long plan;
        private final boolean current;
        private final List<Neck> necks = new ArrayList<>();
        private final Map<String, Plan.PieceLayout> layouts = new LinkedHashMap<>();
        private int orderCount;
        private int inOrder;

        Week(int number) {
            this.number = number;
            this.first = monday.plusWeeks(number);
            this.iso = IsoWeek.of(first);
            this.plan = number + 1L;
            this.current = number == WEEKS - 1;
        }

        void work() throws SQLException {
            long bornThen = (long) pieceCount * (number + 1) / WEEKS;
            int onRackThen = (int) ((long) pieceCount * (number + 1) / WEEKS / 5);
            now = first.atTime(6, 30).toInstant(ZoneOffset.UTC);
            buy((int) (bornThen - all.size()));
            List<BenchPiece> chosen =
                    choose(Math.min(rack.size() * 2 / 3, Math.max(0, (rack.size() - onRackThen) * 3 / 2)));
            reserve(chosen);
            double part = Math.pow((number + 1) / (double) WEEKS, 1.5);
            long actsThen = current ? actCount : Math.round(actCount * part);
            int next = 0;
            int cutting = current ? Math.max(0, chosen.size() - PLANNED_NECKS) : chosen.size();
            for (int day = 0; day < 5; day++) {
                long actsToday = rows.acts() + (actsThen - rows.acts()) * (day + 1) / 5;
                int until = cutting * (day + 1) / 5;
                now = first.plusDays(day).atTime(7, 0).toInstant(ZoneOffset.UTC);
                long gap = 32_000_000_000L / (until - next + Math.max(1, actsToday - rows.acts()));
                while (next < until || rows.acts() < actsToday) {
                    now = now.plusNanos(gap / 1000 * 1000);
                    if (next < until && (rows.acts() >= actsToday || random.nextInt(4) == 0)) {
                        BenchPiece piece = chosen.get(next++);
                        if (random.nextInt(20) == 0) {
                            takeAway(piece);
                        } else {
                            cut(piece);
                        }
                    } else {
                        somethingElse((int) Math.min(5, actsToday - rows.acts()));
                    }
                }
            }
            if (current) {
                openNecks(chosen.subList(cutting, chosen.size()));
            }
            writePlan();
        }

        private void buy(int count) throws SQLException {
            int lots = 0;
            for (int bought = 0; bought < count; lots++) {
                int here = Math.min(24, count - bought);
                String lot = "L-" + first.getYear() + "-" + number + "-" + lots;
                rows.row("lot", "code_key, code", lot, lot);
                String wood = WOODS.get(random.nextInt(WOODS.size()));
                List<StoredAct> acts = new ArrayList<>();
                for (int i = 0; i < here; i++) {
                    BenchPiece piece = born(
                            new BenchPiece.Size(between(300, 1000) * MM, between(66, 95) * MM, between(19, 32) * MM),
                            new BenchPiece.Origin(wood, lot, between(300, 2500), random.nextInt(8) == 0),
                            "Bay " + between(1, 40));
                    read(piece);
                    acts.add(act(i + 1, PieceChanged.Kind.IMPORTED, piece, BigInteger.ZERO, "Imported."));
                }
                bought += here;
                rows.entry(PieceChanged.Kind.IMPORTED, now.plusSeconds(lots), person(), acts, List.of());
            }
        }

        private BenchPiece born(BenchPiece.Size size, BenchPiece.Origin origin, String place) {
            BenchPiece piece = new BenchPiece(
                    all.size() + 1L,
                    codes.get(all.size()),
                    size,
                    origin,
                    LocalDate.ofInstant(now, ZoneOffset.UTC),
                    place);
            all.add(piece);
            toRack(piece);
            return piece;
        }

        private void read(BenchPiece piece) {
            piece.measured(new BenchPiece.Moisture(
                    ++readings, (int) between(600, 1100), LocalDate.ofInstant(now, ZoneOffset.UTC)));
        }

        private List<BenchPiece> choose(int count) {
            List<BenchPiece> chosen = new ArrayList<>();
            for (int i = 0; i < count && !rack.isEmpty(); i++) {
                BenchPiece piece = rack.get(random.nextInt(rack.size()));
                offRack(piece);
                chosen.add(piece);
            }
            return chosen;
        }

        private void reserve(List<BenchPiece> chosen) throws SQLException {
            List<StoredAct> acts = new ArrayList<>();
            now = first.atTime(6, 50).toInstant(ZoneOffset.UTC);
            for (BenchPiece piece : chosen) {
                piece.state = PieceState.RESERVED;
                piece.heldBy = plan;
                piece.heldAt = now;
                acts.add(act(
                        acts.size() + 1,
                        PieceChanged.Kind.RESERVED,
                        piece,
                        piece.volumeThere().um3(),
                        plan,
                        "Reserved for plan " + plan + "."));
            }
            if (!acts.isEmpty()) {
                rows.entry(PieceChanged.Kind.RESERVED, now, "Ada", acts, List.of());
            }
        }

        /** Moves, measures or describes pieces that lie on the rack. */
        private void somethingElse(int most) throws SQLException {
            int what = random.nextInt(20);
            BenchPiece piece = rack.get(random.nextInt(rack.size()));
            BigInteger volume = piece.volumeThere().um3();
            piece.version++;
            if (what < 6) {
                read(piece);
                rows.entry(
                        PieceChanged.Kind.MEASURED,
                        now,
                        person(),
                        List.of(act(1, PieceChanged.Kind.MEASURED, piece, volume, "Moisture measured.")),
                        List.of());
            } else if (what < 9) {
                piece.note = "Seen on " + LocalDate.ofInstant(now, ZoneOffset.UTC)
                        + (random.nextInt(5) == 0 ? ", figured" : ", plain");
                rows.entry(
                        PieceChanged.Kind.DESCRIBED,
                        now,
                        person(),
                        List.of(act(1, PieceChanged.Kind.DESCRIBED, piece, volume, "Its note was changed.")),
                        List.of());
            } else {
                String place = "Bay " + between(1, 40);
                List<StoredAct> acts = new ArrayList<>();
                long first = Math.min(most, between(1, 5));
                int from = piece.index;
                piece.version--;
                for (int i = from; i < Math.min(rack.size(), from + first); i++) {
                    BenchPiece moved = rack.get(i);
                    moved.version++;
                    moved.place = place;
                    acts.add(act(
                            acts.size() + 1,
                            PieceChanged.Kind.MOVED,
                            moved,
                            moved.volumeThere().um3(),
                            "Moved to " + place + "."));
                }
                rows.entry(PieceChanged.Kind.MOVED, now, person(), acts, List.of());
            }
        }

        private void takeAway(BenchPiece piece) throws SQLException {
            BigInteger volume = piece.volumeThere().um3();
            boolean sold = random.nextInt(3) == 0;
            piece.version++;
            piece.state = sold ? PieceState.SOLD : PieceState.SCRAPPED;
            piece.heldBy = null;
            PieceChanged.Kind kind = sold ? PieceChanged.Kind.SOLD : PieceChanged.Kind.SCRAPPED;
            StoredOutcome became = new Became(piece)
                    .outcome(sold ? "SOLD" : "WASTE", sold ? null : "SCRAPPED", volume, null, piece.cost);
            rows.entry(
                    kind,
                    now,
                    person(),
                    List.of(act(1, kind, piece, volume, sold ? "Sold." : "Scrapped.")),
                    List.of(became));
        }

        private Neck open(boolean head) {
            for (int i = necks.size() - 1; i >= 0 && i >= necks.size() - 12; i--) {
                Neck neck = necks.get(i);
                if ((head ? neck.head : neck.neck) == null) {
                    return neck;
                }
            }
            if (inOrder == 0) {
                orderCount++;
                inOrder = (int) between(4, 16);
            }
            Neck last = necks.isEmpty() ? null : necks.get(necks.size() - 1);
            String order = "O-" + number + "-" + orderCount;
            boolean same = last != null && last.order.equals(order);
            Neck neck = new Neck(order, same ? last.number + 1 : 1, "D-" + (1 + orderCount % 12));
            inOrder--;
            necks.add(neck);
            return neck;
        }

        private void cut(BenchPiece piece) throws SQLException {
            new Cutting(piece).run();
        }

        /** Outcomes of one piece. */
        private final class Became {
            private final BenchPiece from;
            private final List<StoredOutcome> list = new ArrayList<>();

            Became(BenchPiece from) {
                this.from = from;
            }

            StoredOutcome outcome(
                    String kind,
                    @Nullable String cause,
                    BigInteger volume,
                    @Nullable BigInteger planned,
                    @Nullable Long cost) {
                return new StoredOutcome(
                        list.size() + 1,
                        kind,
                        cause,
                        from.code,
                        null,
                        volume,
                        planned,
                        cost,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null);
            }

            void waste(String cause, BigInteger volume, boolean planned) {
                if (volume.signum() > 0) {
                    list.add(outcome("WASTE", cause, volume, planned ? near(volume) : null, null));
                }
            }
        }

        private BigInteger near(BigInteger volume) {
            return volume.multiply(BigInteger.valueOf(between(94, 104))).divide(BigInteger.valueOf(100));
        }

        /** One piece cut up: parts from its left end, then a rest or what stays under its own code. */
        private final class Cutting {
            private final BenchPiece piece;
            private final long length;
            private final long height;
            private final long width;
            private final long wood;
            private final Became became;
            private final List<Plan.Cut> cuts = new ArrayList<>();
            private BigInteger parts = BigInteger.ZERO;
            private BigInteger planing = BigInteger.ZERO;
            private BigInteger edge = BigInteger.ZERO;
            private long at;

            Cutting(BenchPiece piece) {
                this.piece = piece;
                this.length = piece.length;
                this.width = piece.width - 6 * MM;
                this.height = piece.thickness - 4 * MM;
                this.wood = piece.width;
                this.became = new Became(piece);
            }

            private BigInteger box(long x, long y, long z) {
                return BigInteger.valueOf(x).multiply(BigInteger.valueOf(y)).multiply(BigInteger.valueOf(z));
            }

            private void part(Neck neck, boolean head, long long_) {
                boolean spoilt = random.nextInt(40) == 0;
                BigInteger volume = box(long_, width, height);
                parts = parts.add(volume);
                planing = planing.add(box(long_, wood, piece.thickness - height));
                edge = edge.add(box(long_, wood - width, height));
                became.list.add(new StoredOutcome(
                        became.list.size() + 1,
                        spoilt ? "WASTE" : "PART",
                        spoilt ? "SPOILT" : null,
                        piece.code,
                        null,
                        volume,
                        near(volume),
                        piece.cost * long_ / length,
                        plan,
                        neck.order,
                        neck.number,
                        neck.design,
                        head ? "HEAD" : "NECK",
                        long_,
                        width,
                        height));
                if (!spoilt) {
                    Plan.Part made = new Plan.Part(
                            piece.code,
                            1,
                            Length.ofUm(at),
                            Length.ofUm(at + long_),
                            false,
                            Length.ofUm(long_ - height * 4),
                            Length.ofUm(long_),
                            Length.ofUm(width),
                            Length.ofUm(height));
                    if (head) {
                        neck.head = made;
                    } else {
                        neck.neck = made;
                    }
                }
                cuts.add(new Plan.Cut(
                        1, Length.ofUm(at + long_), Length.ofUm(at + long_ + 3 * MM), new Angle(13_000), false));
                at += long_ + 3 * MM;
            }

            void run() throws SQLException {
                BigInteger before = piece.volumeThere().um3();
                if (length >= 560 * MM) {
                    part(open(false), false, between(500, 540) * MM);
                }
                if (length - at >= 190 * MM && random.nextInt(3) > 0 || at == 0) {
                    part(open(true), true, Math.min(length - 5 * MM, between(150, 185) * MM));
                }
                int made = cuts.size();
                long over = length - at;
                boolean rest = over >= 135 * MM
                        && all.size() < (long) pieceCount * (number + 1) / WEEKS + 200
                        && all.size() < pieceCount;
                boolean stays = rest && random.nextInt(6) == 0;
                long kept = rest ? over - between(0, 5) * MM : 0;
                BigInteger kerf = box(made * 3 * MM, wood, piece.thickness);
                BigInteger trim = box(over - kept, wood, piece.thickness);
                BigInteger bevel = planing.divide(BigInteger.TEN);
                BigInteger unexplained =
                        random.nextInt(12) == 0 ? edge.divide(BigInteger.valueOf(50)) : BigInteger.ZERO;
                piece.version++;
                List<StoredAct> acts = new ArrayList<>();
                BenchPiece restPiece = null;
                long version = piece.version;
                if (stays) {
                    piece.length = kept;
                    piece.lengthTyped = BenchPiece.typed(kept);
                    piece.state = PieceState.ON_RACK;
                    piece.heldBy = null;
                    toRack(piece);
                } else {
                    piece.state = PieceState.USED_UP;
                }
                acts.add(act(1, PieceChanged.Kind.CUT, piece, before, plan, stays ? "Cut." : "Cut; used up."));
                if (rest && !stays) {
                    restPiece = born(
                            new BenchPiece.Size(kept, piece.width, piece.thickness),
                            new BenchPiece.Origin(piece.species, piece.lot, piece.cost * kept / length, piece.setAside),
                            piece.place);
                    acts.add(act(
                            2,
                            PieceChanged.Kind.REST,
                            restPiece,
                            BigInteger.ZERO,
                            plan,
                            "Cut from " + piece.code + "."));
                    BigInteger volume = restPiece.volumeThere().um3();
                    became.list.add(new StoredOutcome(
                            became.list.size() + 1,
                            "REST",
                            null,
                            piece.code,
                            restPiece.code,
                            volume,
                            near(volume),
                            restPiece.cost,
                            plan,
                            null,
                            null,
                            null,
                            null,
                            kept,
                            piece.width,
                            piece.thickness));
                }
                became.waste("KERF", kerf, true);
                became.waste("BEVEL", bevel, true);
                became.waste("PLANING", planing.subtract(bevel), true);
                became.waste("EDGE", edge.subtract(unexplained), true);
                became.waste("TRIM", trim, true);
                if (unexplained.signum() > 0) {
                    became.list.add(became.outcome("UNEXPLAINED", null, unexplained, null, null));
                }
                layout(version, kept, kerf, bevel, trim);
                rows.entry(PieceChanged.Kind.CUT, now, person(), acts, became.list);
            }

            private void layout(long version, long kept, BigInteger kerf, BigInteger bevel, BigInteger trim) {
                Length across = Length.ofUm(wood);
                Plan.Books books = new Plan.Books(
                        new Volume(box(length, wood, piece.thickness)),
                        new Volume(parts),
                        new Volume(kerf),
                        new Volume(bevel),
                        new Volume(edge),
                        new Volume(trim),
                        new Volume(planing.subtract(bevel)),
                        new Volume(box(kept, wood, piece.thickness)),
                        Volume.ZERO,
                        piece.setAside ? new Volume(parts) : Volume.ZERO);
                layouts.put(
                        piece.code,
                        new Plan.PieceLayout(
                                piece.code,
                                version - 1,
                                Length.ofUm(length),
                                across,
                                Length.ofUm(piece.thickness),
                                Length.ofUm(height),
                                "band",
                                cuts,
                                kept == 0
                                        ? List.of()
                                        : List.of(new Plan.Stretch(
                                                1, Length.ofUm(length - kept), Length.ofUm(length), across, true)),
                                List.of(),
                                books));
            }
        }

        /** Necks that are planned and not begun, each from one piece of its own or two. */
        private void openNecks(List<BenchPiece> pieces) {
            for (BenchPiece piece : pieces) {
                Cutting laid = new Cutting(piece);
                if (piece.length >= 700 * MM) {
                    Neck neck = new Neck("O-" + number + "-open", necks.size() + 1, "D-1");
                    laid.part(neck, false, 520 * MM);
                    laid.part(neck, true, 170 * MM);
                    if (neck.whole()) {
                        necks.add(neck);
                    }
                    laid.layout(piece.version + 1, 0, BigInteger.ZERO, BigInteger.ZERO, BigInteger.ZERO);
                }
            }
        }

        private void writePlan() throws SQLException {
            Map<String, Integer> orders = new LinkedHashMap<>();
            Map<String, String> designs = new LinkedHashMap<>();
            List<Plan.Pairing> pairings = new ArrayList<>();
            for (Neck neck : necks) {
                orders.merge(neck.order, neck.number, Math::max);
                designs.put(neck.order, neck.design);
                if (neck.neck != null && neck.head != null) {
                    pairings.add(new Plan.Pairing(
                            neck.order,
                            neck.number,
                            neck.design,
                            Arrangement.OVERLAID,
                            new Angle(13_000),
                            neck.neck,
                            neck.head,
                            null,
                            null,
                            List.of()));
                }
            }
            for (Map.Entry<String, Integer> order : orders.entrySet()) {
                rows.row(
                        "neck_order",
                        "code, design_id, quantity, due_day, priority, iso_week",
                        order.getKey(),
                        Long.parseLong(
                                designs.getOrDefault(order.getKey(), "D-1").substring(2)),
                        order.getValue(),
                        first.plusDays(4),
                        5,
                        iso.toString());
            }
            // Only what became whole necks was planned; the rest was cut besides.
            Map<String, List<Plan.Cut>> planned = new LinkedHashMap<>();
            for (Plan.Pairing pairing : pairings) {
                for (Plan.Part part : List.of(pairing.neck(), pairing.head())) {
                    planned.computeIfAbsent(part.piece(), c -> new ArrayList<>())
                            .add(new Plan.Cut(
                                    1, part.to(), part.to().plus(Length.ofUm(3 * MM)), new Angle(13_000), false));
                }
            }
            layouts.keySet().retainAll(planned.keySet());
            layouts.replaceAll((code, l) -> new Plan.PieceLayout(
                    code,
                    l.pieceVersion(),
                    l.length(),
                    l.width(),
                    l.thickness(),
                    l.sawnThickness(),
                    l.saw(),
                    planned.getOrDefault(code, List.of()),
                    l.rests(),
                    l.trims(),
                    l.books()));
            if (layouts.isEmpty()) {
                return;
            }
            Plan.Books books =
                    layouts.values().stream().map(Plan.PieceLayout::books).reduce(Plan.Books.NOTHING, Plan.Books::plus);
            Instant made = first.atTime(6, 45).toInstant(ZoneOffset.UTC);
            Plan whole = new Plan(
                    plan,
                    iso.toString(),
                    Plan.State.ACCEPTED,
                    Plan.Status.GAP,
                    made,
                    "invented",
                    0,
                    pairings.size(),
                    Math.max(1, necks.size()),
                    List.of(),
                    pairings,
                    List.copyOf(layouts.values()),
                    List.of(),
                    books);
            rows.row(
                    "plan",
                    "id, week, state, status, made_at, filled, ordered, document",
                    plan,
                    iso.toString(),
                    "ACCEPTED",
                    "GAP",
                    made,
                    pairings.size(),
                    Math.max(1, necks.size()),
                    BenchPlan.document(whole));
            for (Plan.PieceLayout layout : layouts.values()) {
                rows.row(
                        "plan_piece",
                        "plan_id, piece_code, piece_version",
                        plan,
                        layout.piece(),
                        layout.pieceVersion());
            }
            for (String design : designs.values().stream().distinct().toList()) {
                rows.row("plan_design", "plan_id, design_code, design_version", plan, design, 0L);
            }
            for (Plan.Pairing pairing : pairings) {
                rows.row("plan_neck", "order_code, neck_number, plan_id", pairing.order(), pairing.number(), plan);
                steps(pairing);
            }
        }

        private void steps(Plan.Pairing pairing) throws SQLException {
            boolean open = pairing.order().endsWith("-open");
            Instant start = first.plusDays(steps % 5)
                    .atTime(8, 0)
                    .toInstant(ZoneOffset.UTC)
                    .plusSeconds(60 * (steps % 400));
            for (int i = 0; i < STEPS.size(); i++) {
                steps++;
                String kind = STEPS.get(i);
                String piece = ON.get(i).equals("BOTH")
                        ? null
                        : ON.get(i).equals("NECK")
                                ? pairing.neck().piece()
                                : pairing.head().piece();
                Instant done = start.plusSeconds(600L * i);
                boolean glued = !open && kind.equals("GLUE");
                rows.row(
                        "work_step",
                        "plan_id, week, order_code, neck_number, place, kind, part, piece_code, machine, set_up, minutes,"
                                + " state, planned_start, planned_end, done_at, who, done_minutes, clamped_until, cured_at",
                        plan,
                        iso.toString(),
                        pairing.order(),
                        pairing.number(),
                        i + 1,
                        kind,
                        ON.get(i),
                        piece,
                        kind.equals("CUT") ? "band" : null,
                        kind.equals("CUT") ? "13° on band" : null,
                        10,
                        open ? "OPEN" : "DONE",
                        done,
                        done.plusSeconds(600),
                        open ? null : done.plusSeconds(600),
                        open ? null : person(),
                        open ? null : (int) between(5, 20),
                        glued ? done.plusSeconds(15_000) : null,
                        glued ? done.plusSeconds(87_000) : null);
            }
        }
    }

    /** The pieces as they are in the end. */
    private void pieces() throws SQLException {
        Map<String, Long> lots = new LinkedHashMap<>();
        rows.flush();
        rows.ids("lot", "code", lots);
        Map<String, Long> places = new LinkedHashMap<>();
        rows.ids("place", "name", places);
        for (BenchPiece p : all) {
            BenchPiece.Moisture last = p.moistures.isEmpty() ? null : p.moistures.get(p.moistures.size() - 1);
            rows.row(
                    "piece",
                    "id, version, code, code_order, state, species_id, length_um, length_typed, width_um, width_typed,"
                            + " thickness_um, thickness_typed, grain, trim_left_um, trim_right_um, mc_hundredths, mc_read_on,"
                            + " mc_meter, bow_um, crook_um, cup_um, twist_um, set_aside, neck_allowed, lot_id, place_id,"
                            + " cost_cents, note, since",
                    p.id,
                    p.version,
                    p.code,
                    BenchPiece.order(p.code),
                    p.state.name(),
                    p.species,
                    p.length,
                    p.lengthTyped,
                    p.width,
                    BenchPiece.typed(p.width),
                    p.thickness,
                    BenchPiece.typed(p.thickness),
                    "QUARTER",
                    0L,
                    0L,
                    last == null ? null : last.hundredths(),
                    last == null ? null : last.on(),
                    last == null ? null : "PIN",
                    0L,
                    0L,
                    0L,
                    0L,
                    p.setAside,
                    false,
                    p.lot == null ? null : lots.get(p.lot),
                    places.get(p.place),
                    p.cost,
                    p.note,
                    p.since);
            for (BenchPiece.Moisture m : p.moistures) {
                rows.row(
                        "moisture_reading",
                        "id, piece_id, mc_hundredths, meter, read_on",
                        m.id(),
                        p.id,
                        m.hundredths(),
                        "PIN",
                        m.on());
            }
            if (p.heldBy != null) {
                rows.row("reservation", "piece_id, plan_id, reserved_at", p.id, p.heldBy, p.heldAt);
            }
            rows.flushIfFull();
        }
        rows.flush();
    }
}
