package org.scarfwright.shop;

/** How the shop begins: empty, or as the demo shop. It begins once. */
public interface ShopStart {
    /** True once somebody chose how to begin, or put something in without choosing. */
    boolean isStarted();

    /**
     * Begins with nothing but the default rules and saws. Does nothing when the shop has begun already.
     */
    void startEmpty();

    /**
     * Loads the demo shop, all of it or nothing.
     *
     * @throws org.scarfwright.web.ConflictException when the shop holds anything already
     */
    void loadDemo();
}
