package org.scarfwright.ledger.web;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.FamilyTree;
import org.scarfwright.ledger.FamilyTree.Branch;
import org.scarfwright.ledger.FamilyTree.Tree;
import org.scarfwright.ledger.Losses.Neck;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.NotFoundException;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;

/** Where a piece came from and what became of it. */
@Controller
class TreeController {
    private final FamilyTree family;
    private final Shop shop;

    TreeController(FamilyTree family, Shop shop) {
        this.family = family;
        this.shop = shop;
    }

    /** A branch as a row of the table beside the drawing. */
    record Row(
            String name,
            String from,
            String state,
            @Nullable Neck neck,
            Volume volume,
            @Nullable Money cost) {}

    @GetMapping("/ledger/tree/{code}")
    ModelAndView tree(@PathVariable String code) {
        Tree tree = family.of(code).orElseThrow(() -> unknown(code));
        List<Row> rows = new ArrayList<>();
        list(tree.root(), "", rows);
        ModelAndView page = new ModelAndView("ledger/tree");
        page.addObject("tree", tree);
        page.addObject("drawing", TreeDrawing.of(tree));
        page.addObject("rows", rows);
        page.addObject("currency", shop.settings().currency());
        return page;
    }

    private static void list(Branch branch, String from, List<Row> rows) {
        rows.add(new Row(branch.name(), from, state(branch), branch.neck(), branch.volume(), branch.cost()));
        branch.branches().forEach(b -> list(b, branch.name(), rows));
    }

    private static String state(Branch branch) {
        return branch.kind() == FamilyTree.Kind.SPOILT ? "spoilt" : branch.state();
    }

    static NotFoundException unknown(String code) {
        return new NotFoundException(
                "There is no piece “" + (code.length() > 40 ? code.substring(0, 40) + "…" : code) + "”.");
    }
}
