package org.duskply.engine.testing.reference;

/**
 * CIEDE2000, how different two colours look; 1 is about the least that is seen. After G. Sharma, W.
 * Wu, E. N. Dalal, "The CIEDE2000 color-difference formula: implementation notes, supplementary
 * test data, and mathematical observations", Color Research and Application 30 (2005); kL = kC = kH
 * = 1. The metric of the tests on pictures.
 */
public final class DeltaE2000 {
  private static final double SEVENTH_OF_25 = 6103515625d; // 25⁷

  private DeltaE2000() {}

  /** The difference of two CIELAB colours of the same white, each L*, a*, b*. */
  public static double of(double[] one, double[] other) {
    double meanChroma =
        (StrictMath.hypot(one[1], one[2]) + StrictMath.hypot(other[1], other[2])) / 2;
    double g = 0.5 * (1 - StrictMath.sqrt(chromaShare(meanChroma)));
    double a1 = (1 + g) * one[1];
    double a2 = (1 + g) * other[1];
    double c1 = StrictMath.hypot(a1, one[2]);
    double c2 = StrictMath.hypot(a2, other[2]);
    double h1 = hue(a1, one[2]);
    double h2 = hue(a2, other[2]);
    boolean neutral = c1 * c2 == 0;
    double turn = neutral ? 0 : turn(h1, h2);
    double meanHue = neutral ? h1 + h2 : meanHue(h1, h2);

    double lightness = (one[0] + other[0]) / 2;
    double chroma = (c1 + c2) / 2;
    double away = (lightness - 50) * (lightness - 50);
    double sl = 1 + 0.015 * away / StrictMath.sqrt(20 + away);
    double sc = 1 + 0.045 * chroma;
    double sh = 1 + 0.015 * chroma * hueShare(meanHue);
    double l = (other[0] - one[0]) / sl;
    double c = (c2 - c1) / sc;
    double h = 2 * StrictMath.sqrt(c1 * c2) * sine(turn / 2) / sh;
    double rotation = -sine(2 * blueTurn(meanHue)) * 2 * StrictMath.sqrt(chromaShare(chroma));
    return StrictMath.sqrt(l * l + c * c + h * h + rotation * c * h);
  }

  private static double chromaShare(double chroma) {
    double seventh = StrictMath.pow(chroma, 7);
    return seventh / (seventh + SEVENTH_OF_25);
  }

  private static double hue(double a, double b) {
    double degrees = a == 0 && b == 0 ? 0 : StrictMath.toDegrees(StrictMath.atan2(b, a));
    return degrees < 0 ? degrees + 360 : degrees;
  }

  private static double turn(double h1, double h2) {
    double turn = h2 - h1;
    return turn > 180 ? turn - 360 : turn < -180 ? turn + 360 : turn;
  }

  private static double meanHue(double h1, double h2) {
    double sum = h1 + h2;
    return Math.abs(h1 - h2) <= 180 ? sum / 2 : sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
  }

  private static double hueShare(double hue) {
    return 1
        - 0.17 * cosine(hue - 30)
        + 0.24 * cosine(2 * hue)
        + 0.32 * cosine(3 * hue + 6)
        - 0.20 * cosine(4 * hue - 63);
  }

  private static double blueTurn(double hue) {
    double away = (hue - 275) / 25;
    return 30 * StrictMath.exp(-away * away);
  }

  private static double sine(double degrees) {
    return StrictMath.sin(StrictMath.toRadians(degrees));
  }

  private static double cosine(double degrees) {
    return StrictMath.cos(StrictMath.toRadians(degrees));
  }
}
