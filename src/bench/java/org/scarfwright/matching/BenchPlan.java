package org.scarfwright.matching;

/** Plans of an invented shop, as the database keeps them. */
public final class BenchPlan {
    private BenchPlan() {}

    public static String document(Plan plan) {
        return PlanDocument.write(plan);
    }
}
