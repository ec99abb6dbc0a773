package org.scarfwright.necks.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.HashMap;
import java.util.Map;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.JointInput;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.Formats;
import org.scarfwright.web.QueryText;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The joint calculator. Everything it is asked stands in its address. */
@Controller
class JointController {
    private final Shop shop;
    private final Formats formats;

    JointController(Shop shop, Formats formats) {
        this.shop = shop;
        this.formats = formats;
    }

    @GetMapping("/joint")
    String joint(HttpServletRequest request, HttpServletResponse response, Model model) {
        LengthUnit unit = shop.settings().unit();
        QueryText query = new QueryText(withExample(request.getParameterMap()));
        JointInput input = JointForm.read(query, Arrangement.UNDERLAID, unit);
        Map<String, String> typed = new HashMap<>();
        JointForm.example().keySet().forEach(key -> typed.put(key, query.typed(key)));
        model.addAttribute("form", typed);
        model.addAttribute("lengthUnit", unit.symbol());
        model.addAttribute("errorList", query.errors());
        model.addAttribute("errors", FieldErrors.byField(query.errors()));
        if (input == null) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        } else {
            model.addAttribute("sheet", JointSheet.of(input, shop.saws(), formats));
        }
        return "necks/joint";
    }

    /** What an address does not name is taken from the worked example, so that a link may carry one figure alone. */
    private static Map<String, String[]> withExample(Map<String, String[]> given) {
        Map<String, String[]> values = new HashMap<>(given);
        JointForm.example().forEach((key, text) -> values.putIfAbsent(key, new String[] {text}));
        return values;
    }
}
