package org.scarfwright.shop;

/**
 * Asks every room to load its own part of the demo shop into an empty database, inside the publisher's transaction. Rooms
 * that build on others load later: rack 10, necks 20 (the value of their listener's order).
 */
public record DemoShopRequested() {}
