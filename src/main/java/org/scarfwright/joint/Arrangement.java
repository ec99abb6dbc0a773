package org.scarfwright.joint;

/** Which piece lies on which. */
public enum Arrangement {
    /** The head lies under the neck: its bevel is glued to the neck's back, and a seam crosses the head's front face. */
    UNDERLAID,
    /** The head lies on the neck's bevel: its uncut back is glued there, and no seam shows on the head's front face. */
    OVERLAID;

    /** As written in addresses and in the API. */
    public String word() {
        return this == UNDERLAID ? "underlaid" : "overlaid";
    }

    public Arrangement other() {
        return this == UNDERLAID ? OVERLAID : UNDERLAID;
    }
}
