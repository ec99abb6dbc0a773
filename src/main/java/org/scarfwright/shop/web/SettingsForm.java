package org.scarfwright.shop.web;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.MoistureChange;
import org.scarfwright.shop.ShopSettings;
import org.scarfwright.shop.web.Entries.Entry;
import org.scarfwright.shop.web.Entries.Range;
import org.scarfwright.web.Choice;

/**
 * The shop's rules as text.
 *
 * @param shownUnit the unit the page's labels named when it was filled in, which a bare number is in
 */
record SettingsForm(
        String version,
        String shownUnit,
        String lengthUnit,
        String currency,
        String planingPerFace,
        String edgeAllowance,
        String neckStraightness,
        String shortestMachined,
        String usableRestLength,
        String usableRestWidth,
        String neckGrainSlope,
        String driestPercent,
        String wettestPercent,
        String moistureApartPoints,
        String searchSeconds,
        String searchMemoryMb) {
    static final List<String> JSON_KEYS = List.of(
            "lengthUnit",
            "currency",
            "planingPerFaceMm",
            "edgeAllowanceMm",
            "neckStraightnessMm",
            "shortestMachinedMm",
            "usableRestLengthMm",
            "usableRestWidthMm",
            "neckGrainSlope",
            "driestPercent",
            "wettestPercent",
            "moistureApartPoints",
            "searchSeconds",
            "searchMemoryMb");

    static final List<Choice> UNITS =
            List.of(new Choice("mm", "millimetres"), new Choice("cm", "centimetres"), new Choice("in", "inches"));

    private static final int LONGEST_CURRENCY = 8;

    SettingsForm {
        version = text(version);
        shownUnit = text(shownUnit);
        lengthUnit = text(lengthUnit);
        currency = text(currency);
        planingPerFace = text(planingPerFace);
        edgeAllowance = text(edgeAllowance);
        neckStraightness = text(neckStraightness);
        shortestMachined = text(shortestMachined);
        usableRestLength = text(usableRestLength);
        usableRestWidth = text(usableRestWidth);
        neckGrainSlope = text(neckGrainSlope);
        driestPercent = text(driestPercent);
        wettestPercent = text(wettestPercent);
        moistureApartPoints = text(moistureApartPoints);
        searchSeconds = text(searchSeconds);
        searchMemoryMb = text(searchMemoryMb);
    }

    static SettingsForm of(long version, ShopSettings s) {
        LengthUnit unit = s.unit();
        return new SettingsForm(
                Long.toString(version),
                unit.symbol(),
                unit.symbol(),
                s.currency(),
                Entries.typed(s.planingPerFace(), unit),
                Entries.typed(s.edgeAllowance(), unit),
                Entries.typed(s.neckStraightness(), unit),
                Entries.typed(s.shortestMachined(), unit),
                Entries.typed(s.usableRestLength(), unit),
                Entries.typed(s.usableRestWidth(), unit),
                Integer.toString(s.neckGrainSlope()),
                Entries.number(s.driest().toPercent()),
                Entries.number(s.wettest().toPercent()),
                Entries.number(java.math.BigDecimal.valueOf(s.moistureApart().hundredths(), 2)),
                Integer.toString(s.searchSeconds()),
                Integer.toString(s.searchMemoryMb()));
    }

    static SettingsForm of(JsonTexts json) {
        return new SettingsForm(
                "",
                LengthUnit.MM.symbol(),
                json.text("lengthUnit"),
                json.text("currency"),
                json.length("planingPerFace"),
                json.length("edgeAllowance"),
                json.length("neckStraightness"),
                json.length("shortestMachined"),
                json.length("usableRestLength"),
                json.length("usableRestWidth"),
                json.text("neckGrainSlope"),
                json.text("driestPercent"),
                json.text("wettestPercent"),
                json.text("moistureApartPoints"),
                json.text("searchSeconds"),
                json.text("searchMemoryMb"));
    }

    /** The same entries, seen by an editor who now knows that version. */
    SettingsForm withVersion(long seen) {
        return new SettingsForm(
                Long.toString(seen),
                shownUnit,
                lengthUnit,
                currency,
                planingPerFace,
                edgeAllowance,
                neckStraightness,
                shortestMachined,
                usableRestLength,
                usableRestWidth,
                neckGrainSlope,
                driestPercent,
                wettestPercent,
                moistureApartPoints,
                searchSeconds,
                searchMemoryMb);
    }

    /** The unit a bare number is in; millimetres when the form does not say. */
    LengthUnit unitShown() {
        LengthUnit named = unitOf(shownUnit);
        return named == null ? LengthUnit.MM : named;
    }

    /** @throws org.scarfwright.web.InvalidInputException with every error */
    ShopSettings read(Entries entries) {
        Entry unitEntry = new Entry("lengthUnit", "Unit", lengthUnit);
        LengthUnit unit = unitOf(lengthUnit);
        if (unit == null) {
            entries.refuse(unitEntry, "“" + lengthUnit + "” is not a unit of the shop; write mm, cm or in");
            unit = LengthUnit.MM;
        }
        String money = entries.text(new Entry("currency", "Currency", currency), LONGEST_CURRENCY);
        Length planing = entries.length(new Entry("planingPerFace", "Planing per face", planingPerFace), um(0, 10));
        Length edge = entries.length(new Entry("edgeAllowance", "Edge allowance", edgeAllowance), um(0, 50));
        Length straightness =
                entries.length(new Entry("neckStraightness", "Neck straightness", neckStraightness), um(0, 20));
        Length machined =
                entries.length(new Entry("shortestMachined", "Shortest machined piece", shortestMachined), um(0, 1000));
        Length restLength =
                entries.length(new Entry("usableRestLength", "Usable rest, length", usableRestLength), um(1, 6000));
        Length restWidth =
                entries.length(new Entry("usableRestWidth", "Usable rest, width", usableRestWidth), um(1, 1200));
        int grain = entries.whole(new Entry("neckGrainSlope", "Grain slope, 1 in", neckGrainSlope), new Range(1, 100));
        Entry wettestEntry = new Entry("wettestPercent", "Wettest", wettestPercent);
        Moisture driest = entries.moisture(new Entry("driestPercent", "Driest", driestPercent), new Range(0, 3000));
        Moisture wettest = entries.moisture(wettestEntry, new Range(0, 3000));
        Moisture apart =
                entries.moisture(new Entry("moistureApartPoints", "Apart", moistureApartPoints), new Range(0, 3000));
        int seconds = entries.whole(new Entry("searchSeconds", "Search time", searchSeconds), new Range(1, 600));
        int memory = entries.whole(new Entry("searchMemoryMb", "Search memory", searchMemoryMb), new Range(64, 65_536));
        entries.throwIfRefused();
        if (wettest.compareTo(driest) <= 0) {
            entries.refuse(wettestEntry, "“" + wettestPercent + "” is not above the driest, " + driest);
            entries.throwIfRefused();
        }
        return new ShopSettings(
                unit,
                money,
                planing,
                edge,
                straightness,
                machined,
                restLength,
                restWidth,
                grain,
                driest,
                wettest,
                new MoistureChange(apart.hundredths()),
                seconds,
                memory);
    }

    private static Range um(int leastMm, int mostMm) {
        return new Range(leastMm * 1000L, mostMm * 1000L);
    }

    private static @Nullable LengthUnit unitOf(String word) {
        return switch (word.strip().toLowerCase(Locale.ROOT)) {
            case "mm" -> LengthUnit.MM;
            case "cm" -> LengthUnit.CM;
            case "in" -> LengthUnit.INCH;
            default -> null;
        };
    }

    /** A field the browser did not send is an empty one. */
    private static String text(@Nullable String sent) {
        return sent == null ? "" : sent;
    }
}
