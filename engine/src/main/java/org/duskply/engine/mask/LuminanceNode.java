package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.pixel.Encoded;
import org.duskply.engine.pixel.Numbers;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;
import org.duskply.recipe.mask.LuminanceRange;

/**
 * Where a picture is of some luminance, {@code v = E(Y)} on the encoded axis:
 *
 * <pre>
 * m = smooth(from − soft, from, v) · smooth(−to − soft, −to, −v) · c
 * </pre>
 *
 * <p>A bound that is missing leaves its factor out; {@code c} is the coverage of a frame that has
 * one, for what is not there has no luminance. Both bounds lie 2⁻²⁰ further out than the recipe
 * says, a sixteenth of a code of 16 bits, so that a value that equals a bound but for the rounding
 * of {@code Y} is inside. Errors are those of {@link Encoded}, times 1.5/soft.
 */
final class LuminanceNode implements PointNode {
  /** How far beyond its bounds a range reaches. */
  static final double SLACK = 0x1p-20;

  private final Node picture;
  private final LuminanceRange range;
  private final float[] weights;
  private final float darkNone;
  private final float darkAll;
  private final float brightNone;
  private final float brightAll;

  /**
   * A mask of {@code picture}.
   *
   * @param weights of red, green and blue in luminance, summing to 1
   */
  LuminanceNode(Node picture, LuminanceRange range, double[] weights) {
    this.picture = picture;
    this.range = range;
    this.weights = new float[] {(float) weights[0], (float) weights[1], (float) weights[2]};
    double from = range.from() == null ? Double.NEGATIVE_INFINITY : range.from() - SLACK;
    double to = range.to() == null ? Double.POSITIVE_INFINITY : range.to() + SLACK;
    this.darkNone = (float) (from - range.soft());
    this.darkAll = (float) from;
    this.brightNone = (float) (-to - range.soft());
    this.brightAll = (float) -to;
  }

  @Override
  public List<Node> inputs() {
    return List.of(picture);
  }

  @Override
  public int planes() {
    return 1;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    float[][] rgb = in[0];
    float[] m = out[0];
    luminance(rgb, weights, m, from, to);
    Encoded.encode(m, from, to);
    for (int i = from; i < to; i++) {
      m[i] = Numbers.smooth(darkNone, darkAll, m[i]) * Numbers.smooth(brightNone, brightAll, -m[i]);
    }
    covered(rgb, m, from, to);
  }

  /** Luminance of pixels {@code from} up to {@code to}. */
  static void luminance(float[][] rgb, float[] weights, float[] out, int from, int to) {
    float[] red = rgb[0];
    float[] green = rgb[1];
    float[] blue = rgb[2];
    float ofRed = weights[0];
    float ofGreen = weights[1];
    float ofBlue = weights[2];
    for (int i = from; i < to; i++) {
      out[i] = ofRed * red[i] + ofGreen * green[i] + ofBlue * blue[i];
    }
  }

  /** Multiplies values by the coverage of a picture that has one. */
  static void covered(float[][] picture, float[] values, int from, int to) {
    if (picture.length > 3) {
      float[] coverage = picture[3];
      for (int i = from; i < to; i++) {
        values[i] *= coverage[i];
      }
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("luminance").word(range.from() + " " + range.to()).number(range.soft());
    for (float weight : weights) {
      key.number(weight);
    }
  }
}
