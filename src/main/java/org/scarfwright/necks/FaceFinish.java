package org.scarfwright.necks;

/** What the head's front face gets, because a seam shows on a clear one. */
public enum FaceFinish {
    CLEAR,
    OPAQUE,
    VENEERED
}
