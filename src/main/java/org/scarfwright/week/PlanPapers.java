package org.scarfwright.week;

import java.util.function.Function;
import java.util.stream.Collectors;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plans;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.Rack;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.Shop;
import org.scarfwright.shop.ShopSettings;
import org.scarfwright.web.NotFoundException;
import org.scarfwright.week.paper.PlanOnPaper;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.stereotype.Service;

/** Gathers what the sheets of a plan say. */
@Service
public class PlanPapers {
    private final Plans plans;
    private final Designs designs;
    private final Rack rack;
    private final Shop shop;
    private final SpeciesCatalog woods;

    PlanPapers(Plans plans, Designs designs, Rack rack, Shop shop, SpeciesCatalog woods) {
        this.plans = plans;
        this.designs = designs;
        this.rack = rack;
        this.shop = shop;
        this.woods = woods;
    }

    /** @throws NotFoundException when there is no such plan */
    public PlanOnPaper of(long id) {
        Plan plan = plans.find(id).orElseThrow(() -> new NotFoundException("There is no plan " + id + "."));
        ShopSettings settings = shop.settings();
        return new PlanOnPaper(
                plan,
                plans.givenUp(id).stream().map(Plans.GivenUp::neck).collect(Collectors.toSet()),
                rack
                        .findAll(plan.layouts().stream()
                                .map(Plan.PieceLayout::piece)
                                .toList())
                        .stream()
                        .collect(Collectors.toMap(Piece::code, Function.identity())),
                shop.saws().stream().collect(Collectors.toMap(Saw::code, Function.identity())),
                designs.all().stream().collect(Collectors.toMap(NeckDesign::code, Function.identity())),
                woods.all().stream().collect(Collectors.toMap(Species::id, Function.identity())),
                settings.unit(),
                settings.shortestMachined());
    }
}
