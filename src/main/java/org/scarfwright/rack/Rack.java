package org.scarfwright.rack;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/** The rack as the other rooms see it. Every change writes to the ledger in the same transaction. */
public interface Rack {
    /** Pieces nobody has reserved, in order of their codes. */
    List<Piece> free();

    Optional<Piece> find(String code);

    /** In order of their codes; codes that do not exist are left out. */
    List<Piece> findAll(Collection<String> codes);

    /**
     * Reserves all of these pieces for one plan, or none.
     *
     * @throws PieceNotFreeException naming every piece that is gone, reserved or changed since
     */
    void reserve(long planId, Collection<PieceStamp> pieces);

    /** Why {@link #reserve} would refuse these pieces now, one sentence for each; empty when it would not. */
    List<String> refusals(Collection<PieceStamp> pieces);

    /** The plan that holds a piece, or held it when it was cut; empty when none does. */
    OptionalLong holder(String code);

    /** Plans that hold a piece which is not cut yet. */
    Set<Long> holders();

    /**
     * Frees every piece this plan still holds; does nothing when it holds none.
     *
     * @throws org.scarfwright.web.ConflictException when one of them was cut already
     */
    void release(long planId);

    /**
     * Frees those of these pieces that the plan holds and that still stand there; the others are left alone.
     *
     * @param because what the acts say it was done for, a half sentence
     * @param doing who freed them, and why
     * @return codes of the pieces that were freed, in their order
     */
    List<String> release(long planId, Collection<String> codes, String because, Doing doing);

    /** A piece as it was when somebody looked at it. */
    record PieceStamp(String code, long version) {}
}
