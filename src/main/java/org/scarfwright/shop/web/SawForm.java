package org.scarfwright.shop.web;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.SawKind;
import org.scarfwright.shop.web.Entries.Entry;
import org.scarfwright.shop.web.Entries.Range;
import org.scarfwright.web.Choice;

/**
 * A saw as text.
 *
 * @param shownUnit the unit the page's labels named when it was filled in, which a bare number is in
 */
record SawForm(
        String version,
        String shownUnit,
        String code,
        String name,
        String kind,
        String kerf,
        String depth,
        String reach,
        String shallowestDegrees,
        String steepestDegrees,
        String truing,
        String scaleDegrees) {
    static final List<String> JSON_KEYS = List.of(
            "code",
            "name",
            "kind",
            "kerfMm",
            "depthMm",
            "reachMm",
            "shallowestDegrees",
            "steepestDegrees",
            "truingMm",
            "scaleDegrees");

    /** Those of the keys that may be left out. */
    static final List<String> OPTIONAL_KEYS = List.of("scaleDegrees");

    static final List<Choice> KINDS = List.of(
            new Choice("band", "Band saw"),
            new Choice("mitre", "Mitre saw"),
            new Choice("table", "Table saw"),
            new Choice("hand", "Hand saw"));

    /** The address of the page that adds a saw; no saw can be called so. */
    static final String NEW = "new";

    private static final Pattern CODE = Pattern.compile("[a-z0-9][a-z0-9-]{0,19}");
    private static final int LONGEST_NAME = 80;
    private static final Range ANGLE = new Range(1_000, 45_000);
    private static final Range SCALE = new Range(10, 5_000);
    private static final Angle USUAL_SCALE = new Angle(500);

    SawForm {
        version = text(version);
        shownUnit = text(shownUnit);
        code = text(code);
        name = text(name);
        kind = text(kind);
        kerf = text(kerf);
        depth = text(depth);
        reach = text(reach);
        shallowestDegrees = text(shallowestDegrees);
        steepestDegrees = text(steepestDegrees);
        truing = text(truing);
        scaleDegrees = text(scaleDegrees);
    }

    static SawForm empty(LengthUnit unit) {
        return new SawForm("", unit.symbol(), "", "", "band", "", "", "", "", "", "", "");
    }

    static SawForm of(long version, Saw saw, LengthUnit unit) {
        return new SawForm(
                Long.toString(version),
                unit.symbol(),
                saw.code(),
                saw.name(),
                word(saw.kind()),
                Entries.typed(saw.kerf(), unit),
                Entries.typed(saw.depth(), unit),
                Entries.typed(saw.reach(), unit),
                Entries.number(saw.shallowest().toDegrees()),
                Entries.number(saw.steepest().toDegrees()),
                Entries.typed(saw.truing(), unit),
                Entries.number(saw.scale().toDegrees()));
    }

    static SawForm of(JsonTexts json) {
        return new SawForm(
                "",
                LengthUnit.MM.symbol(),
                json.text("code"),
                json.text("name"),
                json.text("kind"),
                json.length("kerf"),
                json.length("depth"),
                json.length("reach"),
                json.text("shallowestDegrees"),
                json.text("steepestDegrees"),
                json.length("truing"),
                json.text("scaleDegrees"));
    }

    SawForm withVersion(String seen) {
        return new SawForm(
                seen,
                shownUnit,
                code,
                name,
                kind,
                kerf,
                depth,
                reach,
                shallowestDegrees,
                steepestDegrees,
                truing,
                scaleDegrees);
    }

    /** The same entries for the saw of that code: a code is chosen once. */
    SawForm withCode(String chosen) {
        return new SawForm(
                version,
                shownUnit,
                chosen,
                name,
                kind,
                kerf,
                depth,
                reach,
                shallowestDegrees,
                steepestDegrees,
                truing,
                scaleDegrees);
    }

    LengthUnit unitShown() {
        return switch (shownUnit) {
            case "in" -> LengthUnit.INCH;
            case "cm" -> LengthUnit.CM;
            default -> LengthUnit.MM;
        };
    }

    Entry codeEntry() {
        return new Entry("code", "Code", code);
    }

    /** @throws org.scarfwright.web.InvalidInputException with every error */
    Saw read(Entries entries) {
        String plainCode = code.strip().toLowerCase(Locale.ROOT);
        if (!CODE.matcher(plainCode).matches() || plainCode.equals(NEW)) {
            entries.refuse(
                    codeEntry(),
                    (plainCode.isEmpty() ? "is empty" : "“" + code.strip() + "” cannot be used")
                            + "; write up to 20 letters a to z, digits and -, for example band-2");
        }
        String plainName = entries.text(new Entry("name", "Name", name), LONGEST_NAME);
        SawKind sawKind = kindOf(kind);
        if (sawKind == null) {
            entries.refuse(
                    new Entry("kind", "Kind", kind),
                    "“" + kind + "” is not a kind of saw; write band, mitre, " + "table or hand");
            sawKind = SawKind.HAND;
        }
        Length cut = entries.length(new Entry("kerf", "Kerf", kerf), new Range(100, 10_000));
        Length deep = entries.length(new Entry("depth", "Depth of cut", depth), new Range(1_000, 1_200_000));
        Length along = entries.length(new Entry("reach", "Reach along the cut", reach), new Range(1_000, 6_000_000));
        Entry steepestEntry = new Entry("steepestDegrees", "Steepest angle", steepestDegrees);
        Angle shallowest = entries.angle(new Entry("shallowestDegrees", "Shallowest angle", shallowestDegrees), ANGLE);
        Angle steepest = entries.angle(steepestEntry, ANGLE);
        Length left = entries.length(new Entry("truing", "Truing allowance", truing), new Range(0, 20_000));
        Angle scale = scaleDegrees.isBlank()
                ? USUAL_SCALE
                : entries.angle(new Entry("scaleDegrees", "Scale readable to", scaleDegrees), SCALE);
        entries.throwIfRefused();
        if (steepest.compareTo(shallowest) < 0) {
            entries.refuse(steepestEntry, "“" + steepestDegrees + "” is below the shallowest angle, " + shallowest);
            entries.throwIfRefused();
        }
        return new Saw(plainCode, plainName, sawKind, cut, deep, along, shallowest, steepest, left, scale);
    }

    static String word(SawKind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }

    private static @Nullable SawKind kindOf(String word) {
        for (SawKind kind : SawKind.values()) {
            if (word(kind).equals(word.strip().toLowerCase(Locale.ROOT))) {
                return kind;
            }
        }
        return null;
    }

    private static String text(@Nullable String sent) {
        return sent == null ? "" : sent;
    }
}
