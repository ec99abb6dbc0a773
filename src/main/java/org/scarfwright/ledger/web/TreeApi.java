package org.scarfwright.ledger.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.FamilyTree;
import org.scarfwright.ledger.FamilyTree.Branch;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** Family trees over the API. */
@RestController
@Tag(name = "Ledger", description = "What happened to every piece, append-only")
class TreeApi {
    private final FamilyTree family;

    TreeApi(FamilyTree family) {
        this.family = family;
    }

    /** A tree. */
    @Schema(name = "FamilyTree")
    record TreeJson(@Nullable String lot, boolean whole, BranchJson root) {}

    /** A piece or a part, and what came of it. */
    @Schema(name = "FamilyBranch")
    record BranchJson(
            @Schema(allowableValues = {"piece", "neck", "head", "spoilt"})
            String kind,

            String name,
            String state,
            BigDecimal lengthMm,
            BigDecimal widthMm,
            BigDecimal volumeMm3,
            @Nullable BigDecimal cost,
            List<BranchJson> branches) {
        static BranchJson of(Branch b) {
            return new BranchJson(
                    b.kind().name().toLowerCase(Locale.ROOT),
                    b.name(),
                    b.state(),
                    b.length().toMm(),
                    b.width().toMm(),
                    b.volume().toMm3(),
                    b.cost() == null ? null : b.cost().toDecimal(),
                    b.branches().stream().map(BranchJson::of).toList());
        }
    }

    @GetMapping("/api/ledger/tree/{code}")
    @Operation(
            summary = "What a piece came from and what became of it",
            description = "The whole tree from the first piece that is known. whole is false when it has more than 400"
                    + " branches; the others are left out.")
    TreeJson tree(@PathVariable String code) {
        return family.of(code)
                .map(t -> new TreeJson(t.lot(), t.whole(), BranchJson.of(t.root())))
                .orElseThrow(() -> TreeController.unknown(code));
    }
}
