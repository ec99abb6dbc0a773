package org.scarfwright.shop;

/** The shop was filled from a file. Published after it is saved. */
public record ShopFileRead() {}
