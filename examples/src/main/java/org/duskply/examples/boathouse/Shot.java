package org.duskply.examples.boathouse;

/**
 * One press of the shutter: when, with which settings, and which flash went off.
 *
 * @param name what the recipe calls the frame
 * @param number of the file
 * @param minute after the first shot
 * @param seconds the shutter was open
 * @param iso sensitivity
 * @param aperture f-number
 * @param flash index of the pop, or {@link #NO_FLASH}
 */
public record Shot(
    String name, int number, int minute, double seconds, int iso, double aperture, int flash) {
  /** In place of a flash's index. */
  public static final int NO_FLASH = -1;

  /** Settings under which the lights have the strength in which the scene is painted. */
  private static final double PLAIN_SECONDS = 1.3;

  private static final double PLAIN_ISO = 200;
  private static final double PLAIN_APERTURE = 8;
  private static final int BASE_MINUTE = 14;

  /** The fire is lit last, so that every other frame serves for a picture without it. */
  private static final int FIRE_LIT = 50;

  /** The file's name inside the folder of frames. */
  public String file() {
    return String.format(java.util.Locale.ROOT, "bh-%04d.tif", number);
  }

  /** True while the assistant stands in the picture. */
  public boolean withPerson() {
    return flash == Flashes.WITH_PERSON;
  }

  /** How strongly each light source of the scene counts in this frame. */
  public float[] weights() {
    double lens = iso / PLAIN_ISO * PLAIN_APERTURE * PLAIN_APERTURE / (aperture * aperture);
    double open = lens * seconds / PLAIN_SECONDS;
    float[] weights = new float[Lights.COUNT];
    weights[Lights.DOME] = (float) (open * falling(9));
    weights[Lights.AFTERGLOW] = (float) (open * falling(19));
    weights[Lights.ROOMS] = (float) (open * 1.35);
    weights[Lights.LANTERNS] = (float) (open * 0.95);
    weights[Lights.BRAZIER] = (float) (minute < FIRE_LIT ? 0 : open * flicker());
    if (flash != NO_FLASH) {
      weights[Lights.FLASH + flash] = (float) lens;
    }
    return weights;
  }

  /** Light of the evening that halves in so many minutes. */
  private double falling(double half) {
    return StrictMath.pow(2, (BASE_MINUTE - minute) / half);
  }

  /** A fire is never the same twice. */
  private double flicker() {
    return 0.9 + 0.25 * StrictMath.sin(2.4 * number);
  }
}
