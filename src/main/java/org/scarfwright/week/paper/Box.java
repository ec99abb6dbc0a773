package org.scarfwright.week.paper;

/** An upright rectangle on the sheet, in millimetres; x and y are its top left corner. */
record Box(double x, double y, double width, double height) {}
