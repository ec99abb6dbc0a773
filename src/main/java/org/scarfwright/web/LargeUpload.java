package org.scarfwright.web;

/**
 * An address that takes larger files than the others; a room that has one declares it as a bean.
 *
 * @param mostBytes of a whole request
 */
public record LargeUpload(String address, long mostBytes) {}
