package org.scarfwright.rack;

import java.util.Collection;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What many pieces are made of and where they came from, as they are described now, used up or not. */
public interface WoodOrigins {
    /** By code; codes that do not exist are left out. */
    Map<String, Origin> of(Collection<String> codes);

    /** Names of woods by their keys, as {@link Origin#woodName()}; a species that does not exist keeps its id. */
    Map<String, String> names(Collection<String> woodKeys);

    /**
     * @param woodKey as {@link PieceWood#key()}
     * @param woodName such as Hard maple; for a lamination every strip's, in order
     * @param lot the lot's key; empty when it is in none
     */
    record Origin(String woodKey, String woodName, @Nullable String lot) {}
}
