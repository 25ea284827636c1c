package org.duskply.engine.adjust;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.adjust.Cdl;
import org.duskply.recipe.adjust.Channel;

/**
 * The part of a color decision list that treats each channel alone, as {@link Tone}s on its axis:
 *
 * <pre>
 * t  = slope·v + offset, held to 0…1 where it clamps
 * v' = t^power for t ≥ 0, else t
 * </pre>
 */
final class CdlTones {
  private static final List<Channel> CHANNELS = List.of(Channel.RED, Channel.GREEN, Channel.BLUE);

  private CdlTones() {}

  /** Both tones for each channel; the three channels as one where their numbers are the same. */
  static List<ToneKernel.Part> parts(Cdl cdl) {
    if (cdl.slope().even() && cdl.offset().even() && cdl.power().even()) {
      return parts(cdl, 0, Channel.RGB);
    }
    List<ToneKernel.Part> parts = new ArrayList<>();
    for (int i = 0; i < CHANNELS.size(); i++) {
      parts.addAll(parts(cdl, i, CHANNELS.get(i)));
    }
    return parts;
  }

  private static List<ToneKernel.Part> parts(Cdl cdl, int numbers, Channel channel) {
    return of(cdl, numbers).stream()
        .map(tone -> new ToneKernel.Part(channel, cdl.axis(), tone))
        .toList();
  }

  /** Both tones of channel 0, 1 or 2: red, green or blue. */
  static List<Tone> of(Cdl cdl, int channel) {
    Tone line = line(cdl.slope().at(channel), cdl.offset().at(channel), cdl.clamp());
    return List.of(line, power(cdl.power().at(channel)));
  }

  private static Tone line(double slope, double offset, boolean clamp) {
    if (!clamp) {
      return new Tone(v -> slope * v + offset, List.of());
    }
    List<Double> corners = slope == 0 ? List.of() : List.of(-offset / slope, (1 - offset) / slope);
    return new Tone(v -> Math.max(0, Math.min(1, slope * v + offset)), corners);
  }

  private static Tone power(double p) {
    return new Tone(t -> t > 0 ? StrictMath.pow(t, p) : t, List.of(0.0), p < 1);
  }
}
