package org.scarfwright.wood;

import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.MoistureChange;

/**
 * Whether a piece is ready to be glued: dry enough, damp enough, and at rest in the air it lies in.
 *
 * <p><b>Source:</b> common practice; the limits are the shop's own.
 *
 * @param sentence the verdict with its reason, for a page
 */
public record Readiness(Verdict verdict, String sentence) {
    /** What is said of a piece. */
    public enum Verdict {
        /** Within the limits, and at rest as far as is known. */
        READY,
        /** Wetter than the shop glues. */
        TOO_WET,
        /** Drier than the shop glues. */
        TOO_DRY,
        /** Within the limits, but the shop's air will still move it. */
        NOT_AT_REST,
        /** Nobody read its moisture. */
        NOT_MEASURED
    }

    /**
     * When the shop glues.
     *
     * @param driest lowest moisture to glue at
     * @param wettest highest moisture to glue at
     * @param apart how far a piece at rest may be from what the shop's air brings wood to
     */
    public record Limits(Moisture driest, Moisture wettest, MoistureChange apart) {}

    /**
     * @param reading the piece's last reading; null when there is none
     * @param inShopAir what the shop's air brings wood to; null when nobody read the hygrometer
     */
    public static Readiness of(@Nullable Moisture reading, Limits limits, @Nullable Moisture inShopAir) {
        if (reading == null) {
            return new Readiness(
                    Verdict.NOT_MEASURED,
                    "Not measured: read its moisture before it is glued. The shop glues from " + limits.driest()
                            + " to " + limits.wettest() + ".");
        }
        if (reading.compareTo(limits.wettest()) > 0) {
            return new Readiness(
                    Verdict.TOO_WET,
                    "Not ready: at " + reading + " it is " + reading.minus(limits.wettest()) + " wetter than the "
                            + limits.wettest() + " the shop glues at. " + drying(limits, inShopAir));
        }
        if (reading.compareTo(limits.driest()) < 0) {
            return new Readiness(
                    Verdict.TOO_DRY,
                    "Not ready: at " + reading + " it is " + limits.driest().minus(reading) + " drier than the "
                            + limits.driest() + " the shop glues at. " + damping(limits, inShopAir));
        }
        String within = reading + " lies between " + limits.driest() + " and " + limits.wettest();
        if (inShopAir == null) {
            return new Readiness(
                    Verdict.READY,
                    "Ready: " + within
                            + ". The shop’s air is not known, so whether it is at rest is not known either.");
        }
        MoistureChange apart = reading.minus(inShopAir).abs();
        if (apart.compareTo(limits.apart()) > 0) {
            boolean shrinks = reading.compareTo(inShopAir) > 0;
            return new Readiness(
                    Verdict.NOT_AT_REST,
                    "Not at rest: " + within + ", but the shop’s air brings wood to about " + inShopAir + ", " + apart
                            + " away, and it will still " + (shrinks ? "shrink" : "swell")
                            + ". Let it lie until it is within "
                            + limits.apart() + ".");
        }
        return new Readiness(
                Verdict.READY,
                "Ready: " + within + ", and the shop’s air, which brings wood to about " + inShopAir
                        + ", will hardly move it.");
    }

    private static String drying(Limits limits, @Nullable Moisture inShopAir) {
        if (inShopAir == null) {
            return "Let it dry.";
        }
        return inShopAir.compareTo(limits.wettest()) > 0
                ? "The shop’s air brings wood to about " + inShopAir
                        + " and will not dry it that far; dry the air first."
                : "Let it dry; the shop’s air brings wood to about " + inShopAir + ".";
    }

    private static String damping(Limits limits, @Nullable Moisture inShopAir) {
        if (inShopAir == null) {
            return "Let it take up moisture.";
        }
        return inShopAir.compareTo(limits.driest()) < 0
                ? "The shop’s air brings wood to about " + inShopAir
                        + " and will not bring it that far; damp the air first."
                : "Let it take up moisture; the shop’s air brings wood to about " + inShopAir + ".";
    }
}
