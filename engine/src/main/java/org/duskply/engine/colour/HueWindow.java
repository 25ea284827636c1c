package org.duskply.engine.colour;

import org.duskply.engine.pixel.Numbers;

/**
 * How much a colour belongs to a range of hues, 0 to 1, in Oklab of a working space:
 *
 * <pre>
 * C = √(a² + b²)
 * t = (a·cos h + b·sin h)/C                   cosine of the angle between the hue and h, the centre
 * w = smooth(cos(width/2 + soft), cos(width/2), t) · smooth(0.01, 0.03, C)
 * </pre>
 *
 * <p>The second factor lets go of what is all but grey, whose hue is noise. A window of 360 degrees
 * holds every hue; one whose soft edges would meet ends opposite its centre. Cosines are prepared
 * in double; {@code t} is within 2⁻²² of its value for the {@code a} and {@code b} given.
 */
public final class HueWindow {
  private static final float GREY = 0.01f;
  private static final float COLOURED = 0.03f;

  // Below any cosine, so that rounding cannot lose the hue opposite the centre.
  private static final float EVERY_HUE = -2;

  private final float alongA;
  private final float alongB;
  private final float none;
  private final float all;
  private final float[] toLms;
  private final float[] labOfRoots;

  private HueWindow(Oklab oklab, double centre, double width, double soft) {
    double h = StrictMath.toRadians(centre);
    this.alongA = (float) StrictMath.cos(h);
    this.alongB = (float) StrictMath.sin(h);
    this.none = cosine(width / 2 + soft);
    this.all = width < 360 ? cosine(width / 2) : EVERY_HUE;
    this.toLms = MatrixKernel.prepare(oklab.toLms());
    this.labOfRoots = MatrixKernel.prepare(Oklab.labOfRoots());
  }

  /**
   * A window.
   *
   * @param oklab of the space in which pixels come
   * @param centre hue in the middle, in degrees from a towards b
   * @param width of the part with weight 1, in degrees, 0 to 360
   * @param soft degrees over which the weight falls to 0, on each side
   */
  public static HueWindow of(Oklab oklab, double centre, double width, double soft) {
    return new HueWindow(oklab, centre, width, soft);
  }

  private static float cosine(double degrees) {
    return (float) StrictMath.cos(StrictMath.toRadians(Math.min(180, degrees)));
  }

  /** The weight of one colour by its Oklab a and b. */
  public float weight(float a, float b) {
    float chroma = (float) Math.sqrt(a * a + b * b);
    if (!(chroma > GREY)) {
      return 0;
    }
    float t = (a * alongA + b * alongB) / chroma;
    return Numbers.smooth(none, all, t) * Numbers.smooth(GREY, COLOURED, chroma);
  }

  /** The weights of linear pixels {@code from} up to {@code to}. */
  public void weights(float[] red, float[] green, float[] blue, float[] weights, int from, int to) {
    float[] m = toLms;
    float[] l = labOfRoots;
    for (int i = from; i < to; i++) {
      float r = red[i];
      float g = green[i];
      float b = blue[i];
      float q0 = Numbers.cbrt(m[0] * r + m[1] * g + m[2] * b);
      float q1 = Numbers.cbrt(m[3] * r + m[4] * g + m[5] * b);
      float q2 = Numbers.cbrt(m[6] * r + m[7] * g + m[8] * b);
      float labA = l[3] * q0 + l[4] * q1 + l[5] * q2;
      float labB = l[6] * q0 + l[7] * q1 + l[8] * q2;
      weights[i] = weight(labA, labB);
    }
  }
}
