package org.duskply.examples.boathouse;

import org.duskply.examples.trace.Vec;

/** A pane of glass with a lit room behind it: a rectangle of light for all that stands outside. */
record Pane(Vec centre, Vec half, Vec otherHalf, Vec outward, double area) {}
