package org.duskply.engine.adjust;

import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Channel;
import org.jspecify.annotations.Nullable;

/**
 * How one kind of adjustment is done: either as a tone of the channels it names, or by a kernel of
 * its own that looks at all three.
 *
 * @param kind the adjustment's record
 * @param identity whether its parameters leave every picture as it is
 * @param channel for a tone: what it acts on
 * @param tone for a tone: what it does there
 * @param kernel for another: prepares it for the working space
 */
record Binding<A extends Adjustment>(
    Class<A> kind,
    Predicate<A> identity,
    @Nullable Function<A, Channel> channel,
    @Nullable Function<A, Tone> tone,
    @Nullable BiFunction<A, ColourSpace, AdjustKernel> kernel) {

  static <A extends Adjustment> Binding<A> ofTone(
      Class<A> kind, Predicate<A> identity, Function<A, Channel> channel, Function<A, Tone> tone) {
    return new Binding<>(kind, identity, channel, tone, null);
  }

  static <A extends Adjustment> Binding<A> ofColour(
      Class<A> kind, Predicate<A> identity, BiFunction<A, ColourSpace, AdjustKernel> kernel) {
    return new Binding<>(kind, identity, null, null, kernel);
  }

  boolean isIdentity(Adjustment adjustment) {
    return identity.test(kind.cast(adjustment));
  }

  /** What a tone acts on; null for an adjustment with a kernel of its own. */
  @Nullable Channel channelOf(Adjustment adjustment) {
    return channel == null ? null : channel.apply(kind.cast(adjustment));
  }

  Tone toneOf(Adjustment adjustment) {
    if (tone == null) {
      throw new IllegalArgumentException(kind + " is not a tone");
    }
    return tone.apply(kind.cast(adjustment));
  }

  AdjustKernel kernelOf(Adjustment adjustment, ColourSpace working) {
    if (kernel == null) {
      throw new IllegalArgumentException(kind + " is a tone");
    }
    return kernel.apply(kind.cast(adjustment), working);
  }
}
