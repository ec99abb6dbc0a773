package org.scarfwright.joint;

/** The rows of a joint's table, with the letter that marks each in the drawings. */
public enum JointRow {
    NECK_FRONT("A", "neck front"),
    NECK_BACK("B", "neck back"),
    HEAD_FRONT("C", "head front"),
    HEAD_BACK("D", "head back"),
    GLUE_FACE("E", "glue face"),
    SEAM("F", "seam"),
    BACK_END("G", "back end"),
    WING("J", "wing"),
    BACK_OF_HEAD("K", "head’s back");

    private final String letter;
    private final String word;

    JointRow(String letter, String word) {
        this.letter = letter;
        this.word = word;
    }

    public String letter() {
        return letter;
    }

    /** What it is called in a drawing. */
    public String word() {
        return word;
    }
}
