/**
 * What is found in frames before there is a plan: camera settings against each other, and
 * statistics of a lattice of samples. Whole-frame statistics are integer histograms, so that no
 * order of counting changes them; a number that goes on into a picture is rounded to six digits
 * first, and the rounded number is the one used. Nothing here reads the picture below a step.
 */
@NullMarked
package org.duskply.engine.measure;

import org.jspecify.annotations.NullMarked;
