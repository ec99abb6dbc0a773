package org.scarfwright.week.paper;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.Bevel;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.matching.Plan;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.necks.FaceFinish;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.GrainCut;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceWood;
import org.scarfwright.rack.Warp;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.SawKind;

/** Plans laid out by hand from random figures, without the search: parts end to end on one to three lanes of a piece. */
final class RandomPlans {
    private final Random random;

    RandomPlans(long seed) {
        random = new Random(seed);
    }

    private Length mm(double from, double to) {
        return Length.ofUm(Math.round((from + random.nextDouble() * (to - from)) * 1000));
    }

    private static TypedLength typed(Length length) {
        return new TypedLength(length, length.mm() + "");
    }

    PlanOnPaper next() {
        Saw saw = new Saw(
                "band",
                "Band saw",
                SawKind.BAND,
                mm(0.8, 3),
                mm(150, 200),
                mm(400, 500),
                Angle.ofDegrees(5),
                Angle.ofDegrees(30),
                mm(0, 2),
                new Angle(500));
        Map<String, NeckDesign> designs = new HashMap<>();
        Map<String, Piece> pieces = new HashMap<>();
        List<Plan.Pairing> pairings = new ArrayList<>();
        List<Plan.PieceLayout> layouts = new ArrayList<>();
        int count = 1 + random.nextInt(2);
        for (int i = 0; i < count; i++) {
            Angle angle = new Angle(7_000 + random.nextInt(10_001));
            NeckDesign design = design("D" + i, angle);
            designs.put(design.code(), design);
            Arrangement arrangement = design.arrangements().get(0);
            ScarfJoint joint = ScarfJoint.of(design.jointInput(arrangement, angle));
            Length sawn = design.neckThickness().length();
            Length kerfRun = Bevel.kerfRun(saw.kerf(), angle);
            Length run = Bevel.run(sawn, angle);
            Length neckLong = joint.neckShort().plus(run);
            Length headLong = joint.headShort().plus(run);
            Length start = mm(0, 20);
            boolean two = random.nextBoolean();
            Length near = mm(62, 90);
            int headLane = two ? 2 : 1;
            // On one lane the two share the bevel; on two each has its own.
            Length headFrom = two ? start : start.plus(neckLong).plus(kerfRun).minus(run);
            Plan.Part neck = new Plan.Part(
                    "P" + i, 1, start, start.plus(neckLong), false, joint.neckShort(), neckLong, near, sawn);
            Plan.Part head = new Plan.Part(
                    "P" + i,
                    headLane,
                    headFrom,
                    headFrom.plus(headLong),
                    !two,
                    joint.headShort(),
                    headLong,
                    near,
                    sawn);
            List<Plan.Cut> cuts = new ArrayList<>();
            cuts.add(new Plan.Cut(1, neck.to().minus(run), neck.to().plus(kerfRun), angle, !two));
            Length end = neck.to().max(head.to()).plus(kerfRun);
            if (two) {
                cuts.add(new Plan.Cut(2, head.to().minus(run), head.to().plus(kerfRun), angle, false));
            } else {
                cuts.add(new Plan.Cut(1, head.to(), head.to().plus(saw.kerf()), null, false));
            }
            Length length = end.plus(mm(5, 300));
            Length width = two ? near.plus(near).plus(saw.kerf()) : near.plus(mm(0, 20));
            List<Plan.Stretch> rests = List.of(new Plan.Stretch(1, end, length, near, random.nextBoolean()));
            layouts.add(new Plan.PieceLayout(
                    "P" + i,
                    0,
                    length,
                    width,
                    sawn.plus(mm(0, 6)),
                    sawn,
                    "band",
                    cuts,
                    rests,
                    List.of(),
                    Plan.Books.NOTHING));
            pieces.put("P" + i, piece("P" + i, length, width, sawn.plus(mm(0, 6))));
            pairings.add(new Plan.Pairing(
                    "O-" + i,
                    1,
                    design.code(),
                    arrangement,
                    angle,
                    neck,
                    head,
                    joint.wingWidth(),
                    joint.seamFromNut(),
                    List.of("It fits.")));
        }
        Plan plan = new Plan(
                7,
                "2026-W49",
                Plan.State.ACCEPTED,
                Plan.Status.PROVED,
                Instant.EPOCH,
                "test",
                0,
                count,
                count,
                List.of(),
                pairings,
                layouts,
                List.of(),
                Plan.Books.NOTHING);
        return new PlanOnPaper(
                plan, Set.of(), pieces, Map.of("band", saw), designs, Map.of(), LengthUnit.MM, Length.ofMm(300));
    }

    private NeckDesign design(String code, Angle angle) {
        while (true) {
            NeckDesign made = new NeckDesign(
                    1,
                    0,
                    code,
                    "Neck " + code,
                    typed(mm(350, 650)),
                    typed(mm(42, 60)),
                    typed(mm(50, 66)),
                    typed(mm(17, 24)),
                    typed(mm(140, 230)),
                    typed(mm(66, 110)),
                    typed(mm(11, 16)),
                    List.of(angle),
                    List.of(random.nextBoolean() ? Arrangement.UNDERLAID : Arrangement.OVERLAID),
                    FaceFinish.OPAQUE,
                    List.of(),
                    List.of(),
                    MatchRule.ANY,
                    false,
                    true,
                    typed(Length.ofMm(0)),
                    typed(Length.ofMm(0)));
            if (ScarfJoint.refusals(made.jointInput(made.arrangements().get(0), angle))
                    .isEmpty()) {
                return made;
            }
        }
    }

    private static Piece piece(String code, Length length, Length width, Length thickness) {
        return new Piece(
                1,
                0,
                code,
                PieceState.ON_RACK,
                new PieceWood.Solid("maple_sugar"),
                typed(length),
                typed(width),
                typed(thickness),
                GrainCut.UNKNOWN,
                null,
                null,
                Warp.UNMEASURED,
                Length.ZERO,
                Length.ZERO,
                List.of(),
                false,
                false,
                null,
                null,
                "bay 1",
                null,
                "",
                LocalDate.of(2026, 1, 5));
    }
}
