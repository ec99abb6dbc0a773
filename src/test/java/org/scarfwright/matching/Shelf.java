package org.scarfwright.matching;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.MoistureChange;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.necks.FaceFinish;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Defect;
import org.scarfwright.rack.GrainCut;
import org.scarfwright.rack.MiddleReading;
import org.scarfwright.rack.MoistureReading;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceWood;
import org.scarfwright.rack.Warp;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.SawKind;
import org.scarfwright.shop.ShopSettings;

/** Pieces, designs and shops that exist only in tests. */
final class Shelf {
    static final LocalDate DAY = LocalDate.of(2026, 11, 30);
    static final IsoWeek WEEK = new IsoWeek(2026, 49);

    /** As the woods' table names them. */
    static final WoodWords WOODS = new WoodWords(Map.of(
            "maple_sugar", "Hard maple (sugar)", "walnut_black", "Black walnut", "cherry_black", "Black cherry"));

    private Shelf() {}

    static Length mm(String millimetres) {
        return Length.ofMm(new BigDecimal(millimetres));
    }

    /** Nothing is lost to the saw, to truing or to planing: what is left are the bare figures of the joint. */
    static ShopRules bareShop() {
        return new ShopRules(settings("0", "0"), List.of(saw("bare", "0", "0")), DAY, WOODS);
    }

    static ShopRules shop() {
        return new ShopRules(settings("1", "2"), List.of(saw("band", "1", "1.5")), DAY, WOODS);
    }

    static ShopSettings settings(String planingPerFace, String edge) {
        return new ShopSettings(
                LengthUnit.MM,
                "EUR",
                mm(planingPerFace),
                mm(edge),
                mm("1"),
                mm("300"),
                mm("120"),
                mm("40"),
                15,
                Moisture.ofPercent(6),
                Moisture.ofPercent(10),
                new MoistureChange(200));
    }

    static Saw saw(String code, String kerf, String truing) {
        return new Saw(
                code,
                "Band saw",
                SawKind.BAND,
                mm(kerf),
                mm("150"),
                mm("400"),
                Angle.ofDegrees(5),
                Angle.ofDegrees(30),
                mm(truing),
                new Angle(500));
    }

    /** 457 mm neck, 180 mm head, 20 mm thick against 15 mm, 60 mm wide against 78 mm, 10°, no allowances. */
    static DesignBuilder design() {
        return new DesignBuilder();
    }

    static PieceBuilder piece(String code, String length, String width, String thickness) {
        return new PieceBuilder(code, length, width, thickness);
    }

    static MatchInput input(ShopRules shop, List<Piece> pieces, MatchInput.Line... lines) {
        List<NeckDesign> designs = new ArrayList<>();
        for (MatchInput.Line line : lines) {
            if (designs.stream().noneMatch(d -> d.code().equals(line.design().code()))) {
                designs.add(line.design());
            }
        }
        return new MatchInput(WEEK, List.of(lines), designs, pieces, shop.settings(), shop.saws(), shop.day(), WOODS);
    }

    static MatchInput.Line line(String order, NeckDesign design, int necks) {
        List<Integer> numbers = new ArrayList<>();
        for (int i = 1; i <= necks; i++) {
            numbers.add(i);
        }
        return new MatchInput.Line(order, design, numbers, 5);
    }

    static final class DesignBuilder {
        private String code = "D-1";
        private String neckLength = "457";
        private String neckThickness = "20";
        private String headLength = "180";
        private String headWidth = "78";
        private String headThickness = "15";
        private String neckWidth = "60";
        private List<Angle> angles = List.of(Angle.ofDegrees(10));
        private List<Arrangement> arrangements = List.of(Arrangement.UNDERLAID, Arrangement.OVERLAID);
        private FaceFinish finish = FaceFinish.OPAQUE;
        private List<String> neckWoods = List.of();
        private List<String> headWoods = List.of();
        private MatchRule match = MatchRule.ANY;
        private boolean linesMeet;
        private boolean wings = true;
        private String end = "0";
        private String side = "0";

        DesignBuilder code(String value) {
            code = value;
            return this;
        }

        DesignBuilder neck(String length, String width, String thickness) {
            neckLength = length;
            neckWidth = width;
            neckThickness = thickness;
            return this;
        }

        DesignBuilder head(String length, String width, String thickness) {
            headLength = length;
            headWidth = width;
            headThickness = thickness;
            return this;
        }

        DesignBuilder angles(int... degrees) {
            angles = Arrays.stream(degrees).mapToObj(Angle::ofDegrees).toList();
            return this;
        }

        DesignBuilder only(Arrangement arrangement) {
            arrangements = List.of(arrangement);
            return this;
        }

        DesignBuilder finish(FaceFinish value) {
            finish = value;
            return this;
        }

        DesignBuilder woods(List<String> neck, List<String> head) {
            neckWoods = neck;
            headWoods = head;
            return this;
        }

        DesignBuilder match(MatchRule value) {
            match = value;
            return this;
        }

        DesignBuilder linesMeet() {
            linesMeet = true;
            return this;
        }

        DesignBuilder noWings() {
            wings = false;
            return this;
        }

        DesignBuilder allowances(String endAllowance, String sideAllowance) {
            end = endAllowance;
            side = sideAllowance;
            return this;
        }

        NeckDesign build() {
            return new NeckDesign(
                    1,
                    0,
                    code,
                    code,
                    typed(neckLength),
                    typed("44"),
                    typed(neckWidth),
                    typed(neckThickness),
                    typed(headLength),
                    typed(headWidth),
                    typed(headThickness),
                    angles,
                    arrangements,
                    finish,
                    neckWoods,
                    headWoods,
                    match,
                    linesMeet,
                    wings,
                    typed(end),
                    typed(side));
        }

        private static TypedLength typed(String millimetres) {
            return TypedLength.of(mm(millimetres));
        }
    }

    static final class PieceBuilder {
        private final String code;
        private final String length;
        private final String width;
        private final String thickness;
        private PieceState state = PieceState.ON_RACK;
        private PieceWood wood = new PieceWood.Solid("maple_sugar");
        private @Nullable Integer grainSlope;
        private @Nullable MoistureReading moisture;
        private Warp warp = new Warp(Length.ZERO, Length.ZERO, Length.ZERO, Length.ZERO, DAY);
        private Length trimLeft = Length.ZERO;
        private Length trimRight = Length.ZERO;
        private final List<Defect> defects = new ArrayList<>();
        private boolean setAside;
        private boolean neckAllowed;
        private @Nullable String lot;
        private @Nullable LocalDate ready;
        private @Nullable Money cost;
        private LocalDate since = LocalDate.of(2026, 1, 5);

        PieceBuilder(String code, String length, String width, String thickness) {
            this.code = code;
            this.length = length;
            this.width = width;
            this.thickness = thickness;
        }

        PieceBuilder state(PieceState value) {
            state = value;
            return this;
        }

        PieceBuilder wood(String species) {
            wood = new PieceWood.Solid(species);
            return this;
        }

        /** Strips by species and width, from the near edge. */
        PieceBuilder strips(String... speciesAndWidth) {
            List<PieceWood.LaminationStrip> strips = new ArrayList<>();
            for (int i = 0; i < speciesAndWidth.length; i += 2) {
                strips.add(new PieceWood.LaminationStrip(
                        speciesAndWidth[i], mm(speciesAndWidth[i + 1]), GrainCut.UNKNOWN));
            }
            wood = new PieceWood.Lamination(strips);
            return this;
        }

        PieceBuilder slope(int oneIn) {
            grainSlope = oneIn;
            return this;
        }

        PieceBuilder moisture(double percent) {
            moisture = new MoistureReading(Moisture.ofPercent(percent), DAY, MoistureReading.Meter.PIN);
            return this;
        }

        PieceBuilder warp(String bow, String crook, String cup, String twist) {
            warp = new Warp(mm(bow), mm(crook), mm(cup), mm(twist), DAY);
            return this;
        }

        PieceBuilder warpUnmeasured() {
            warp = Warp.UNMEASURED;
            return this;
        }

        /** What was read over the middle half of the piece; after the warp. */
        PieceBuilder middle(String bow, String crook, String twist) {
            warp = new Warp(
                    warp.bow(),
                    warp.crook(),
                    warp.cup(),
                    warp.twist(),
                    new MiddleReading(mm(bow), mm(crook), mm(twist)),
                    DAY);
            return this;
        }

        PieceBuilder bow(String millimetres) {
            return warp(millimetres, "0", "0", "0");
        }

        PieceBuilder trims(String left, String right) {
            trimLeft = mm(left);
            trimRight = mm(right);
            return this;
        }

        PieceBuilder knot(String from, String to, boolean structural) {
            defects.add(new Defect(Defect.Kind.KNOT, mm(from), mm(to), Length.ZERO, mm("10"), structural));
            return this;
        }

        PieceBuilder setAside(boolean allowedAsNeck) {
            setAside = true;
            neckAllowed = allowedAsNeck;
            return this;
        }

        PieceBuilder lot(@Nullable String value, @Nullable LocalDate readyOn) {
            lot = value;
            ready = readyOn;
            return this;
        }

        PieceBuilder cost(long cents) {
            cost = new Money(cents);
            return this;
        }

        PieceBuilder since(LocalDate day) {
            since = day;
            return this;
        }

        Piece build() {
            return new Piece(
                    1,
                    3,
                    code,
                    state,
                    wood,
                    TypedLength.of(mm(length)),
                    TypedLength.of(mm(width)),
                    TypedLength.of(mm(thickness)),
                    GrainCut.UNKNOWN,
                    grainSlope,
                    moisture,
                    warp,
                    trimLeft,
                    trimRight,
                    defects,
                    setAside,
                    neckAllowed,
                    lot,
                    ready,
                    null,
                    cost,
                    "",
                    since);
        }
    }
}
