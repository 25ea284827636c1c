package org.duskply.engine.adjust;

import java.util.List;
import org.duskply.engine.pixel.Segments;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Channel;

/**
 * One tone curve a channel: what neighbouring curves, ends, powers, shoulders and color decision
 * lists without saturation come to.
 *
 * <pre>
 * x' = L(tₙ(… t₁(E(x))))     on the encoded axis
 * x' = tₙ(… t₁(x))           on the linear one
 * </pre>
 *
 * <p>The composition is fitted as a whole, so a run of any length costs one look-up and one
 * rounding a sample, seldom two (see {@link Tone}); errors are those of {@link Segments}.
 */
final class ToneKernel implements AdjustKernel {
  /**
   * A tone and the channels it is for.
   *
   * @param channel any but luminance
   */
  record Part(Channel channel, Axis axis, Tone tone) {}

  private final Segments[] red;
  private final Segments[] green;
  private final Segments[] blue;

  private ToneKernel(Segments[] red, Segments[] green, Segments[] blue) {
    this.red = red;
    this.green = green;
    this.blue = blue;
  }

  /** The kernel for parts done in order, at least one and all on the same axis. */
  static ToneKernel prepare(List<Part> parts) {
    List<Tone> forRed = tones(parts, Channel.RED);
    List<Tone> forGreen = tones(parts, Channel.GREEN);
    List<Tone> forBlue = tones(parts, Channel.BLUE);
    Axis axis = parts.get(0).axis();
    Segments[] red = curve(forRed, axis);
    Segments[] green = forGreen.equals(forRed) ? red : curve(forGreen, axis);
    Segments[] blue =
        forBlue.equals(forRed) ? red : forBlue.equals(forGreen) ? green : curve(forBlue, axis);
    return new ToneKernel(red, green, blue);
  }

  private static List<Tone> tones(List<Part> parts, Channel channel) {
    return parts.stream()
        .filter(part -> part.channel() == Channel.RGB || part.channel() == channel)
        .map(Part::tone)
        .toList();
  }

  /** Nothing to do where there is no tone: the way to the axis and back would round. */
  private static Segments[] curve(List<Tone> tones, Axis axis) {
    return tones.isEmpty() ? new Segments[0] : Tone.thereAndBack(tones, axis);
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    run(this.red, red, from, to);
    run(this.green, green, from, to);
    run(this.blue, blue, from, to);
  }

  private static void run(Segments[] curve, float[] channel, int from, int to) {
    for (Segments table : curve) {
      table.apply(channel, from, to);
    }
  }
}
