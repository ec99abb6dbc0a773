package org.scarfwright.shop;

/** Implemented by every room that keeps things of the shop, so that the demo shop is never mixed into a real one. */
public interface ShopContents {
    /** True while the room keeps nothing. */
    boolean isEmpty();
}
