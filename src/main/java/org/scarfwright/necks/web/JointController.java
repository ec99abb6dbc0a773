package org.scarfwright.necks.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.WoodOnTheRack;
import org.scarfwright.necks.WoodOnTheRack.PartWood;
import org.scarfwright.necks.WoodOnTheRack.Serving;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.Choice;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.Formats;
import org.scarfwright.web.QueryText;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.util.UriComponentsBuilder;

/** The joint calculator. Everything it is asked stands in its address. */
@Controller
class JointController {
    private static final List<Choice> ARRANGEMENTS = List.of(
            new Choice(JointForm.EITHER, "either, as the wood suits"),
            new Choice(Arrangement.UNDERLAID.word(), "underlaid"),
            new Choice(Arrangement.OVERLAID.word(), "overlaid"));

    private final Shop shop;
    private final WoodOnTheRack rack;
    private final StringsSection strings;
    private final Formats formats;

    JointController(Shop shop, WoodOnTheRack rack, StringsSection strings, Formats formats) {
        this.shop = shop;
        this.rack = rack;
        this.strings = strings;
        this.formats = formats;
    }

    /** What one arrangement asks of wood, and which pieces have it. */
    record Wood(String name, Part neck, Part head) {}

    /** @param more how many other pieces could serve, in words; empty when none */
    record Part(String asks, List<String> pieces, String more, WoodOnTheRack.@Nullable Nearest nearest) {}

    @GetMapping("/joint")
    String joint(HttpServletRequest request, HttpServletResponse response, Model model) {
        LengthUnit shopUnit = shop.settings().unit();
        QueryText query = new QueryText(withExample(request.getParameterMap()));
        LengthUnit unit = Forms.unit(query.has(Forms.UNIT) ? query.typed(Forms.UNIT) : null, shopUnit);
        List<Arrangement> arrangements = JointForm.arrangements(query);
        JointInput input = JointForm.read(query, Arrangement.UNDERLAID, unit);
        JointExtras extras = JointExtras.read(query, input, unit);
        StringsForm.StringSet set = strings.read(query, unit);
        strings.show(model, query, set, input);
        model.addAttribute("form", typed(query));
        model.addAttribute("arrangements", ARRANGEMENTS);
        model.addAttribute("lengthUnit", unit.symbol());
        model.addAttribute("besideAsked", besideAsked(query));
        model.addAttribute("errorList", query.errors());
        model.addAttribute("errors", FieldErrors.byField(query.errors()));
        if (input == null || !query.errors().isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return "necks/joint";
        }
        Shown shown = new Shown(shopUnit, formats);
        model.addAttribute("sheet", JointSheet.of(input, extras.kerf(), shown));
        model.addAttribute("bench", JointBench.of(input, extras, shop.saws(), shown));
        model.addAttribute("wood", wood(input, shown));
        model.addAttribute("designAddress", designAddress(query, arrangements, unit));
        return "necks/joint";
    }

    private List<Wood> wood(JointInput input, Shown shown) {
        List<Wood> wood = new ArrayList<>();
        for (Arrangement arrangement : Arrangement.values()) {
            JointInput in = input.with(arrangement);
            if (ScarfJoint.refusals(in).isEmpty()) {
                Serving serving = rack.serving(ScarfJoint.of(in));
                wood.add(new Wood(
                        arrangement == Arrangement.UNDERLAID ? "Underlaid" : "Overlaid",
                        part(serving.neck(), shown),
                        part(serving.head(), shown)));
            }
        }
        return wood;
    }

    private Part part(PartWood part, Shown shown) {
        int more = part.serving() - part.pieces().size();
        return new Part(
                shown.length(part.length()) + " × " + shown.length(part.width()) + " × "
                        + shown.length(part.thickness()),
                part.pieces(),
                more == 0 ? "" : "and " + more + (part.all() ? " more" : " more of those looked at"),
                part.nearest());
    }

    private static Map<String, String> typed(QueryText query) {
        Map<String, String> typed = new HashMap<>();
        JointForm.example().keySet().forEach(key -> typed.put(key, query.typed(key)));
        JointExtras.keys().forEach(key -> typed.put(key, query.typed(key)));
        typed.put(
                JointForm.ARRANGEMENT,
                query.has(JointForm.ARRANGEMENT) ? query.typed(JointForm.ARRANGEMENT) : JointForm.EITHER);
        return typed;
    }

    /** Whether a field that is folded away holds something of the reader's own, or an error. */
    private static boolean besideAsked(QueryText query) {
        return query.errors().stream().anyMatch(e -> JointExtras.keys().contains(e.field()))
                || Stream.of(JointExtras.Field.VOLUTE, JointExtras.Field.HEEL_DEPTH, JointExtras.Field.HEEL_LENGTH)
                        .anyMatch(field -> !query.typed(field.key()).isBlank())
                || !query.typed(JointExtras.TUNERS).isBlank();
    }

    /** The design form, filled with this joint as it was typed. */
    private static String designAddress(QueryText query, List<Arrangement> arrangements, LengthUnit unit) {
        UriComponentsBuilder address = UriComponentsBuilder.fromPath("/designs/new");
        JointForm.example().keySet().forEach(key -> address.queryParam(key, "{" + key + "}"));
        address.queryParam(
                "arrangements", arrangements.stream().map(Arrangement::word).collect(Collectors.joining(" ")));
        address.queryParam("wings", "true").queryParam(Forms.UNIT, unit.symbol());
        Map<String, String> values = new HashMap<>();
        JointForm.example().keySet().forEach(key -> values.put(key, query.typed(key)));
        return address.encode().buildAndExpand(values).toUriString();
    }

    /**
     * What an address does not name is taken from the worked example, so that a link may carry one figure alone. The head's stock
     * comes from it only together with the head's thickness, which it must not be thinner than.
     */
    private static Map<String, String[]> withExample(Map<String, String[]> given) {
        Map<String, String[]> values = new HashMap<>(given);
        if (!given.containsKey(JointForm.Field.HEAD_THICKNESS.key())) {
            values.putIfAbsent(JointExtras.Field.HEAD_STOCK.key(), new String[] {"20 mm"});
        }
        values.putIfAbsent(JointExtras.Field.KERF.key(), new String[] {"1 mm"});
        JointForm.example().forEach((key, text) -> values.putIfAbsent(key, new String[] {text}));
        return values;
    }
}
