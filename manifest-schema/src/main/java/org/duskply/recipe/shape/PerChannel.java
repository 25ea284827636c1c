package org.duskply.recipe.shape;

/**
 * A number for each of red, green and blue.
 *
 * @param red for the red channel
 * @param green for the green channel
 * @param blue for the blue channel
 */
public record PerChannel(double red, double green, double blue) {
  /** The same number for all three. */
  public static PerChannel all(double number) {
    return new PerChannel(number, number, number);
  }

  /** The number of channel 0, 1 or 2: red, green or blue. */
  public double at(int channel) {
    return switch (channel) {
      case 0 -> red;
      case 1 -> green;
      case 2 -> blue;
      default -> throw new IllegalArgumentException("there is no channel " + channel);
    };
  }

  /** Whether all three are the same, so that one number says them. */
  public boolean even() {
    return red == green && green == blue;
  }
}
