package org.scarfwright.necks.web;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.book.DesignField;
import org.scarfwright.necks.book.DesignText;
import org.scarfwright.necks.book.Draft;
import org.scarfwright.necks.book.Notices;

/**
 * A design as the API gives it.
 *
 * @param typed lengths as they were entered, by key
 * @param notices what is allowed but worth a second look
 */
record DesignJson(
        String code,
        String name,
        BigDecimal neckLengthMm,
        BigDecimal nutWidthMm,
        BigDecimal heelWidthMm,
        BigDecimal neckThicknessMm,
        BigDecimal headLengthMm,
        BigDecimal headWidthMm,
        BigDecimal headThicknessMm,
        List<BigDecimal> angles,
        List<String> arrangements,
        String finish,
        List<String> neckWoods,
        List<String> headWoods,
        String match,
        boolean linesMeet,
        boolean wingsAllowed,
        BigDecimal endAllowanceMm,
        BigDecimal sideAllowanceMm,
        Map<String, String> typed,
        List<String> notices,
        long version) {

    static DesignJson of(NeckDesign d) {
        return new DesignJson(
                d.code(),
                d.name(),
                mm(d.neckLength().length()),
                mm(d.nutWidth().length()),
                mm(d.heelWidth().length()),
                mm(d.neckThickness().length()),
                mm(d.headLength().length()),
                mm(d.headWidth().length()),
                mm(d.headThickness().length()),
                d.angles().stream().map(a -> plain(a.toDegrees())).toList(),
                d.arrangements().stream().map(Arrangement::word).toList(),
                DesignText.word(d.finish()),
                d.neckWoods(),
                d.headWoods(),
                DesignText.word(d.match()),
                d.linesMeet(),
                d.wingsAllowed(),
                mm(d.endAllowance().length()),
                mm(d.sideAllowance().length()),
                typed(d),
                Notices.of(d),
                d.version());
    }

    private static Map<String, String> typed(NeckDesign design) {
        Draft draft = DesignText.draftOf(design);
        Map<String, String> typed = new LinkedHashMap<>();
        for (DesignField field : DesignField.values()) {
            if (field.isLength()) {
                typed.put(field.json(), draft.text(field));
            }
        }
        return typed;
    }

    private static BigDecimal mm(Length length) {
        return plain(length.toMm());
    }

    private static BigDecimal plain(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}
