package org.scarfwright.wood;

import org.jspecify.annotations.Nullable;

/** Woods with only what a test asks about. */
final class Woods {
    private Woods() {}

    static Species shrinking(String id, @Nullable Double radial, @Nullable Double tangential) {
        return new Species(
                id, id, id, null, null, null, null, null, radial, tangential, null, null, "none", "none", null);
    }

    static Species weighing(@Nullable Double gravity, @Nullable String basis, @Nullable Double volumetric) {
        return new Species(
                "w", "w", "w", gravity, basis, null, null, null, null, null, volumetric, null, "none", "none", null);
    }

    static Species named(String botanical) {
        return new Species(
                "w", "w", botanical, null, null, null, null, null, null, null, null, null, "none", "none", null);
    }

    static Species bonding(@Nullable String bonding) {
        return new Species(
                "w", "w", "w", null, null, null, null, null, null, null, null, bonding, "none", "none", bonding);
    }

    static Species sourced(String shrinkageSource) {
        return new Species(
                "w", "w", "w", null, null, null, null, null, null, null, null, null, "none", shrinkageSource, null);
    }
}
