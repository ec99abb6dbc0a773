package org.scarfwright.necks.book;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.DesignRules;
import org.scarfwright.joint.JointRefusal;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.necks.FaceFinish;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.book.DraftReader.Range;
import org.scarfwright.web.NearWords;
import org.scarfwright.wood.Species;

/**
 * Reads a design and refuses what no shop makes.
 *
 * <p>The ranges of sizes are wide margins around what is common practice: neck blanks 20 mm to 1 in thick, heads about 15 mm
 * thick and up to about 78 mm wide.
 */
final class DesignReader {
    static final int LONGEST_CODE = 40;
    static final int LONGEST_NAME = 120;
    static final int MOST_ANGLES = 12;

    private static final Range ALLOWANCE = Range.of(0, 50, "2 mm", "1/16 in").orElse(2);
    private static final Map<DesignField, Range> RANGES = Map.of(
            DesignField.NECK_LENGTH, Range.of(100, 1500, "457 mm", "18 in"),
            DesignField.NUT_WIDTH, Range.of(10, 300, "43 mm", "1 11/16 in"),
            DesignField.HEEL_WIDTH, Range.of(10, 300, "57 mm", "2 1/4 in"),
            DesignField.NECK_THICKNESS, Range.of(5, 60, "20 mm", "13/16 in"),
            DesignField.HEAD_LENGTH, Range.of(50, 500, "180 mm", "7 in"),
            DesignField.HEAD_WIDTH, Range.of(10, 300, "78 mm", "3 in"),
            DesignField.HEAD_THICKNESS, Range.of(5, 60, "15 mm", "9/16 in"),
            DesignField.END_ALLOWANCE, ALLOWANCE,
            DesignField.SIDE_ALLOWANCE, ALLOWANCE);
    private static final Map<String, DesignField> JOINT_FIELDS = Map.of(
            "angle", DesignField.ANGLE,
            "neckThickness", DesignField.NECK_THICKNESS,
            "headThickness", DesignField.HEAD_THICKNESS,
            "neckLength", DesignField.NECK_LENGTH,
            "headLength", DesignField.HEAD_LENGTH,
            "neckWidth", DesignField.HEEL_WIDTH,
            "headWidth", DesignField.HEAD_WIDTH);
    private static final Pattern BETWEEN_ANGLES = Pattern.compile("\\s*[;|/]\\s*|,\\s+|\\s+(?!°)");
    private static final Pattern COMMA = Pattern.compile("(\\d{1,2}),(\\d{1,2})°?");

    private final List<Species> species;

    DesignReader(List<Species> species) {
        this.species = species;
    }

    Reading<NeckDesign> read(Draft draft) {
        DraftReader in = new DraftReader(draft);
        Optional<String> code = in.code(DesignField.CODE, LONGEST_CODE, "WITHY-6");
        Optional<String> name = in.words(DesignField.NAME, LONGEST_NAME);
        if (name.isPresent() && name.get().isEmpty()) {
            in.flaw(DesignField.NAME, "is empty; write for example Withy six-string");
        }
        Optional<TypedLength> neckLength = length(in, DesignField.NECK_LENGTH);
        Optional<TypedLength> nutWidth = length(in, DesignField.NUT_WIDTH);
        Optional<TypedLength> heelWidth = length(in, DesignField.HEEL_WIDTH);
        Optional<TypedLength> neckThickness = length(in, DesignField.NECK_THICKNESS);
        Optional<TypedLength> headLength = length(in, DesignField.HEAD_LENGTH);
        Optional<TypedLength> headWidth = length(in, DesignField.HEAD_WIDTH);
        Optional<TypedLength> headThickness = length(in, DesignField.HEAD_THICKNESS);
        if (headThickness.isPresent() && neckThickness.isPresent()) {
            DesignRules.headThickerThanNeckStock(
                            headThickness.get().length(), neckThickness.get().length())
                    .ifPresent(r -> in.flaw(DesignField.HEAD_THICKNESS, r.reason()));
        }
        List<Angle> angles = angles(in);
        List<Arrangement> arrangements = arrangements(in);
        Optional<FaceFinish> finish = in.oneOf(DesignField.FINISH, FaceFinish.class, Optional.empty());
        List<String> neckWoods = woods(in, DesignField.NECK_WOODS);
        List<String> headWoods = woods(in, DesignField.HEAD_WOODS);
        Optional<MatchRule> match = in.oneOf(DesignField.MATCH, MatchRule.class, Optional.of(MatchRule.ANY));
        boolean linesMeet = in.yes(DesignField.LINES_MEET, false);
        boolean wings = in.yes(DesignField.WINGS, false);
        Optional<TypedLength> endAllowance = length(in, DesignField.END_ALLOWANCE);
        Optional<TypedLength> sideAllowance = length(in, DesignField.SIDE_ALLOWANCE);
        if (!in.isSound()) {
            return Reading.refused(in.flaws());
        }
        NeckDesign design = new NeckDesign(
                0,
                0,
                code.orElseThrow(),
                name.orElseThrow(),
                neckLength.orElseThrow(),
                nutWidth.orElseThrow(),
                heelWidth.orElseThrow(),
                neckThickness.orElseThrow(),
                headLength.orElseThrow(),
                headWidth.orElseThrow(),
                headThickness.orElseThrow(),
                angles,
                arrangements,
                finish.orElseThrow(),
                neckWoods,
                headWoods,
                match.orElseThrow(),
                linesMeet,
                wings,
                endAllowance.orElseThrow(),
                sideAllowance.orElseThrow());
        refuseImpossibleJoints(in, design);
        return in.isSound() ? Reading.of(design) : Reading.refused(in.flaws());
    }

    private static Optional<TypedLength> length(DraftReader in, DesignField field) {
        Range range = RANGES.get(field);
        if (range == null) {
            throw new IllegalArgumentException(field + " is no length");
        }
        return in.length(field, range);
    }

    private static void refuseImpossibleJoints(DraftReader in, NeckDesign design) {
        for (Arrangement arrangement : design.arrangements()) {
            for (Angle angle : design.angles()) {
                for (JointRefusal refusal : ScarfJoint.refusals(design.jointInput(arrangement, angle))) {
                    in.flaw(JOINT_FIELDS.getOrDefault(refusal.field(), DesignField.ANGLE), refusal.reason());
                }
            }
        }
    }

    private static List<Angle> angles(DraftReader in) {
        String text = in.text(DesignField.ANGLE);
        if (text.isEmpty()) {
            in.flaw(
                    DesignField.ANGLE,
                    "is empty; write degrees, for example 10, or several that are allowed, for example 10 13");
            return List.of();
        }
        Set<Angle> angles = new TreeSet<>();
        for (String one : BETWEEN_ANGLES.split(text, -1)) {
            if (!one.isEmpty()) {
                angle(in, one).ifPresent(angles::add);
            }
        }
        if (angles.size() > MOST_ANGLES) {
            in.flaw(DesignField.ANGLE, "holds " + angles.size() + " angles; a design allows at most " + MOST_ANGLES);
        }
        return List.copyOf(angles);
    }

    private static Optional<Angle> angle(DraftReader in, String text) {
        Matcher comma = COMMA.matcher(text);
        if (comma.matches() && couldBeTwoAngles(comma.group(1), comma.group(2))) {
            in.flaw(
                    DesignField.ANGLE,
                    text,
                    DraftReader.quote(text) + " can be read two ways; write "
                            + new BigDecimal(comma.group(1) + "." + comma.group(2)) + " or " + comma.group(1) + " "
                            + comma.group(2));
            return Optional.empty();
        }
        try {
            Angle angle = Angle.parse(text);
            Optional<JointRefusal> refusal = DesignRules.angleOutOfRange(angle);
            refusal.ifPresent(r -> in.flaw(DesignField.ANGLE, text, r.reason()));
            return refusal.isPresent() ? Optional.empty() : Optional.of(angle);
        } catch (MeasureFormatException e) {
            in.flaw(DesignField.ANGLE, text, String.valueOf(e.getMessage()));
            return Optional.empty();
        }
    }

    /** 10,5 is ten and a half; 10,13 may be two angles, because people list them shallowest first. */
    private static boolean couldBeTwoAngles(String whole, String rest) {
        return !rest.startsWith("0") && Integer.parseInt(rest) > Integer.parseInt(whole);
    }

    private static List<Arrangement> arrangements(DraftReader in) {
        String text = in.text(DesignField.ARRANGEMENTS).toLowerCase(Locale.ROOT);
        String right = "; write underlaid, overlaid or both";
        if (text.isEmpty()) {
            in.flaw(DesignField.ARRANGEMENTS, "is empty" + right);
            return List.of();
        }
        Set<Arrangement> found = new TreeSet<>();
        for (String word : text.split("[\\s,;|/+]+", -1)) {
            if (word.isEmpty()) {
                continue;
            }
            if (word.equals("both")) {
                found.addAll(List.of(Arrangement.values()));
                continue;
            }
            Optional<Arrangement> known = List.of(Arrangement.values()).stream()
                    .filter(a -> a.word().equals(word))
                    .findFirst();
            if (known.isPresent()) {
                found.add(known.get());
            } else {
                in.flaw(DesignField.ARRANGEMENTS, word, DraftReader.quote(word) + " is none of them" + right);
            }
        }
        return List.copyOf(found);
    }

    /** Ids or names of woods; an empty field or the word any allows every wood. */
    private List<String> woods(DraftReader in, DesignField field) {
        String text = in.text(field);
        if (text.isEmpty() || text.equalsIgnoreCase("any")) {
            return List.of();
        }
        Set<String> ids = new LinkedHashSet<>();
        for (String word : woodWords(text)) {
            Optional<String> id = wood(word);
            if (id.isPresent()) {
                ids.add(id.get());
            } else {
                List<String> near = near(word);
                in.flaw(
                        field,
                        word,
                        DraftReader.quote(word) + " is not a wood the program knows; "
                                + (near.isEmpty()
                                        ? "write for example maple_sugar, walnut_black or cherry_black"
                                        : "did you mean " + String.join(" or ", near) + "?"));
            }
        }
        return List.copyOf(ids);
    }

    private List<String> woodWords(String text) {
        if (wood(text).isPresent()) {
            return List.of(text);
        }
        List<String> words = new ArrayList<>();
        for (String part : text.split("\\s*[,;|\\r\\n]\\s*", -1)) {
            if (wood(part).isPresent()) {
                words.add(part);
            } else {
                String[] single = part.strip().split("\\s+", -1);
                boolean ids = List.of(single).stream().anyMatch(s -> s.contains("_") || wood(s).isPresent());
                words.addAll(ids ? List.of(single) : List.of(part.strip()));
            }
        }
        words.removeIf(String::isEmpty);
        return words;
    }

    private Optional<String> wood(String word) {
        String plain = word.strip();
        return species.stream()
                .filter(s -> s.id().equalsIgnoreCase(plain)
                        || s.commonName().equalsIgnoreCase(plain)
                        || s.botanicalName().equalsIgnoreCase(plain))
                .map(Species::id)
                .findFirst();
    }

    private List<String> near(String word) {
        List<String> ids = species.stream().map(Species::id).toList();
        List<String> near = NearWords.of(word, ids, 3);
        if (!near.isEmpty()) {
            return near;
        }
        List<String> names =
                NearWords.of(word, species.stream().map(Species::commonName).toList(), 3);
        return species.stream()
                .filter(s -> names.contains(s.commonName()))
                .map(Species::id)
                .toList();
    }
}
