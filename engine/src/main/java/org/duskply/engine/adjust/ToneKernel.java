package org.duskply.engine.adjust;

import java.util.List;
import org.duskply.engine.pixel.Segments;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Channel;
import org.jspecify.annotations.Nullable;

/**
 * One tone curve a channel: what neighbouring curves and powers of a list come to.
 *
 * <pre>
 * x' = L(tₙ(… t₁(E(x))))     on the encoded axis
 * x' = tₙ(… t₁(x))           on the linear one
 * </pre>
 *
 * <p>The composition is fitted as a whole, so a run of any length costs one look-up and one
 * rounding a sample; errors are those of {@link Segments}.
 */
final class ToneKernel implements AdjustKernel {
  /**
   * A tone and the channels it is for.
   *
   * @param channel any but luminance
   */
  record Part(Channel channel, Axis axis, Tone tone) {}

  private final @Nullable Segments red;
  private final @Nullable Segments green;
  private final @Nullable Segments blue;

  private ToneKernel(@Nullable Segments red, @Nullable Segments green, @Nullable Segments blue) {
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
    Segments red = curve(forRed, axis);
    Segments green = forGreen.equals(forRed) ? red : curve(forGreen, axis);
    Segments blue =
        forBlue.equals(forRed) ? red : forBlue.equals(forGreen) ? green : curve(forBlue, axis);
    return new ToneKernel(red, green, blue);
  }

  private static List<Tone> tones(List<Part> parts, Channel channel) {
    return parts.stream()
        .filter(part -> part.channel() == Channel.RGB || part.channel() == channel)
        .map(Part::tone)
        .toList();
  }

  private static @Nullable Segments curve(List<Tone> tones, Axis axis) {
    return tones.isEmpty() ? null : Tone.segments(tones, axis);
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    run(this.red, red, from, to);
    run(this.green, green, from, to);
    run(this.blue, blue, from, to);
  }

  private static void run(@Nullable Segments curve, float[] channel, int from, int to) {
    if (curve != null) {
      curve.apply(channel, from, to);
    }
  }
}
