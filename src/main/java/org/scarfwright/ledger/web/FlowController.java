package org.scarfwright.ledger.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.scarfwright.ledger.WoodFlow;
import org.scarfwright.ledger.WoodFlow.Fate;
import org.scarfwright.ledger.WoodFlow.Flow;
import org.scarfwright.ledger.WoodFlow.Share;
import org.scarfwright.measure.Volume;
import org.scarfwright.web.CsvSheet;
import org.scarfwright.web.FlowChart;
import org.scarfwright.web.Formats;
import org.scarfwright.web.ShareStrip;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.servlet.ModelAndView;

/** From the wood that came to the rack to what it is now. */
@Controller
@Tag(name = "Yield", description = "What became of the wood, added up from the ledger")
class FlowController {
    private final WoodFlow flow;
    private final Formats formats;

    FlowController(WoodFlow flow, Formats formats) {
        this.flow = flow;
        this.formats = formats;
    }

    /** A share as a row, with the address its rows are at. */
    record Row(String title, Volume volume, String percent, String address) {}

    /** A share. */
    @Schema(name = "WoodFate")
    record ShareJson(
            String fate,
            BigDecimal mm3,

            @Schema(description = "All shares together are 100.00")
            BigDecimal percent) {}

    /** All wood that came. */
    @Schema(name = "WoodFlow")
    record FlowJson(BigDecimal cameMm3, List<ShareJson> shares) {}

    @GetMapping("/yield/flow")
    ModelAndView show() {
        Flow now = flow.now();
        ModelAndView page = new ModelAndView("ledger/flow");
        page.addObject("came", now.came());
        page.addObject(
                "rows",
                now.shares().stream()
                        .map(s -> new Row(s.fate().title(), s.volume(), percent(s) + " %", address(s.fate())))
                        .toList());
        page.addObject("words", words(now));
        page.addObject(
                "drawing",
                FlowChart.of(
                        "flow",
                        "What became of all wood",
                        "Came to the rack, 100.00 %",
                        now.shares().stream()
                                .map(s -> new FlowChart.Arm(s.fate().title(), s.hundredths(), kind(s.fate())))
                                .toList()));
        return page;
    }

    private static String address(Fate fate) {
        return fate.figure()
                .map(f -> "/yield/rows?by=month&what=" + f.word())
                .orElse(fate == Fate.SOLD ? "/ledger" : "/rack");
    }

    private static ShareStrip.Kind kind(Fate fate) {
        return fate == Fate.RESTS || fate == Fate.AS_IT_CAME
                ? ShareStrip.Kind.REST
                : fate.isLost() ? ShareStrip.Kind.WASTE : ShareStrip.Kind.USED;
    }

    private String words(Flow now) {
        return "Of " + formats.litres(now.came()) + " that came to the rack, "
                + percent(hundredths(now, Fate.NECKS)) + " % became parts of necks and "
                + percent(hundredths(now, Fate.RESTS) + hundredths(now, Fate.AS_IT_CAME)) + " % is still there"
                + now.shares().stream()
                        .filter(s -> s.fate().isLost() && s.hundredths() > 0)
                        .max(Comparator.comparingInt(Share::hundredths))
                        .map(s -> "; most of what was lost is "
                                + s.fate().title().toLowerCase(Locale.ROOT) + ", " + percent(s) + " %.")
                        .orElse("; nothing was lost.");
    }

    private static int hundredths(Flow now, Fate fate) {
        return now.shares().stream()
                .filter(s -> s.fate() == fate)
                .mapToInt(Share::hundredths)
                .sum();
    }

    private static String percent(Share share) {
        return percent(share.hundredths());
    }

    private static String percent(int hundredths) {
        return BigDecimal.valueOf(hundredths, 2).toPlainString();
    }

    @GetMapping("/yield/flow.csv")
    ResponseEntity<String> csv() {
        CsvSheet sheet = new CsvSheet("fate", "title", "volume_mm3", "percent");
        flow.now()
                .shares()
                .forEach(s -> sheet.row(
                        word(s.fate()), s.fate().title(), s.volume().toMm3(), BigDecimal.valueOf(s.hundredths(), 2)));
        return YieldController.file("wood-flow.csv", sheet.text());
    }

    @GetMapping("/api/yield/flow")
    @ResponseBody
    @Operation(summary = "What became of all wood that ever came to the rack")
    FlowJson flow() {
        Flow now = flow.now();
        return new FlowJson(
                now.came().toMm3(),
                now.shares().stream()
                        .map(s -> new ShareJson(
                                word(s.fate()), s.volume().toMm3(), BigDecimal.valueOf(s.hundredths(), 2)))
                        .toList());
    }

    private static String word(Fate fate) {
        return fate.name().toLowerCase(Locale.ROOT);
    }
}
