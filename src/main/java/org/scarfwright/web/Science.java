package org.scarfwright.web;

/** What a room has to say about the sources of its figures. Every bean of this type is a section of the page of sources. */
public interface Science {
    ScienceSection section();
}
