package org.scarfwright.rack;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.BiConsumer;
import org.scarfwright.measure.Volume;

/**
 * The whole state of pieces as text, for the ledger: everything that is stored about a piece, its readings and who holds it, in
 * one form for each state and on every database. Not in it is what is only remembered for speed: what the piece could be.
 */
public interface PieceDocuments {
    /** The document of a piece that is not there. */
    String NONE = "";

    /** By code; codes that do not exist are left out. */
    Map<String, String> of(Collection<String> codes);

    /** Codes of every piece of these lots, in their order. */
    List<String> ofLots(Set<String> lotKeys);

    /** Every piece the rack ever had, code and document, in order of their codes; many are read at a time. */
    void each(BiConsumer<String, String> taker);

    /**
     * Puts pieces back to what their documents say, all but their versions, which go on counting. {@link #NONE} takes a piece away.
     * Belongs into its caller's transaction and tells nobody.
     *
     * @param documents by code
     * @return keys of the lots whose day of readiness changed
     */
    Set<String> putBack(Map<String, String> documents);

    /** Of the wood that is there; zero for a piece that is used up, scrapped, sold or not there. */
    Volume volumeThere(String document);

    /** The plan that holds a piece in this state. */
    OptionalLong planOf(String document);

    /** What is kept beside a stored name or code and does not follow from it, one sentence each. */
    List<String> spellingFaults();
}
