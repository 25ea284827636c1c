package org.duskply.engine.adjust;

import java.util.function.DoubleUnaryOperator;
import org.duskply.recipe.adjust.Axis;

/**
 * An adjustment of a single value: what exposure, curve, power and contrast are to one channel or
 * to the luminance.
 *
 * @param axis where the value is read and put back
 * @param curve the value's new place on that axis, never falling; exact, for preparing
 * @param knots where on that axis one formula takes over from another
 */
record Tone(Axis axis, DoubleUnaryOperator curve, double... knots) {}
