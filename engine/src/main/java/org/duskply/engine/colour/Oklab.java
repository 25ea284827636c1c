package org.duskply.engine.colour;

/**
 * Oklab (Ottosson 2020) on the linear values of a working space, with the matrices of CSS Color 4,
 * by which D65 is exactly (1, 0, 0):
 *
 * <pre>
 *   LMS = toLms · RGB        Lab = LAB_OF_ROOTS · ∛LMS
 *   ∛LMS = ROOTS_OF_LAB · Lab        RGB = fromLms · (∛LMS)³
 * </pre>
 *
 * with a cube root that keeps the sign. A space with another white is Bradford-adapted to D65
 * within {@link #toLms}. Matrices are row-major and in double; kernels round them to float and take
 * the root from {@code engine.pixel.Numbers}.
 */
public final class Oklab {
  private static final double[] LMS_OF_XYZ = {
    0.8190224379967030, 0.3619062600528904, -0.1288737815209879,
    0.0329836539323885, 0.9292868615863434, 0.0361446663506424,
    0.0481771893596242, 0.2642395317527308, 0.6335478284694309
  };
  private static final double[] LAB_OF_ROOTS = {
    0.2104542683093140, 0.7936177747023054, -0.0040720430116193,
    1.9779985324311684, -2.42859224204858, 0.4505937096174110,
    0.0259040424655478, 0.7827717124575296, -0.8086757549230774
  };
  private static final double[] ROOTS_OF_LAB = Matrix3.inverse(LAB_OF_ROOTS);

  private final double[] toLms;
  private final double[] fromLms;

  private Oklab(double[] toLms) {
    this.toLms = toLms;
    this.fromLms = Matrix3.inverse(toLms);
  }

  /** The matrices for linear values of {@code space}. */
  public static Oklab of(ColourSpace space) {
    double[] toD65 = Bradford.between(space.white(), White.d65());
    return new Oklab(Matrix3.multiply(LMS_OF_XYZ, Matrix3.multiply(toD65, space.toXyz())));
  }

  /** Linear RGB to LMS. */
  public double[] toLms() {
    return toLms.clone();
  }

  /** LMS to linear RGB. */
  public double[] fromLms() {
    return fromLms.clone();
  }

  /** Cube roots of LMS to Lab; the same for every space. */
  public static double[] labOfRoots() {
    return LAB_OF_ROOTS.clone();
  }

  /** Lab to cube roots of LMS; the same for every space. */
  public static double[] rootsOfLab() {
    return ROOTS_OF_LAB.clone();
  }

  /** Lab of one linear colour, for preparing numbers and for tests. */
  public double[] lab(double r, double g, double b) {
    double[] lms = Matrix3.apply(toLms, r, g, b);
    return Matrix3.apply(
        LAB_OF_ROOTS, StrictMath.cbrt(lms[0]), StrictMath.cbrt(lms[1]), StrictMath.cbrt(lms[2]));
  }

  /** The linear colour of one Lab. */
  public double[] rgb(double lightness, double a, double b) {
    double[] roots = Matrix3.apply(ROOTS_OF_LAB, lightness, a, b);
    return Matrix3.apply(
        fromLms,
        roots[0] * roots[0] * roots[0],
        roots[1] * roots[1] * roots[1],
        roots[2] * roots[2] * roots[2]);
  }
}
