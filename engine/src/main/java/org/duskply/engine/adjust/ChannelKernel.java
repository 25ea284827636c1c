package org.duskply.engine.adjust;

import java.util.List;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Channel;

/** A run of tones on each channel by itself. */
final class ChannelKernel implements AdjustKernel {
  private final ChannelTone red;
  private final ChannelTone green;
  private final ChannelTone blue;

  private ChannelKernel(ChannelTone red, ChannelTone green, ChannelTone blue) {
    this.red = red;
    this.green = green;
    this.blue = blue;
  }

  static ChannelKernel prepare(List<Adjustment> run) {
    if (run.stream().allMatch(adjustment -> Adjustments.channel(adjustment) == Channel.RGB)) {
      ChannelTone each = ChannelTone.of(run);
      return new ChannelKernel(each, each, each);
    }
    return new ChannelKernel(
        only(run, Channel.RED), only(run, Channel.GREEN), only(run, Channel.BLUE));
  }

  private static ChannelTone only(List<Adjustment> run, Channel one) {
    return ChannelTone.of(
        run.stream()
            .filter(
                adjustment -> {
                  Channel channel = Adjustments.channel(adjustment);
                  return channel == Channel.RGB || channel == one;
                })
            .toList());
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    this.red.run(red, from, to);
    this.green.run(green, from, to);
    this.blue.run(blue, from, to);
  }
}
