package org.duskply.engine.adjust;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Power;
import org.duskply.recipe.adjust.Saturation;

/** The table of adjustments: one line a kind. */
final class Bindings {
  private static final List<Binding<?>> TABLE =
      List.of(
          Binding.ofTone(
              Exposure.class, ExposureTone::identity, e -> Channel.RGB, ExposureTone::of),
          Binding.ofTone(Curve.class, CurveTone::identity, Curve::channel, CurveTone::of),
          Binding.ofTone(Power.class, PowerTone::identity, p -> Channel.RGB, PowerTone::of),
          Binding.ofTone(
              Contrast.class, ContrastTone::identity, Contrast::channel, ContrastTone::of),
          Binding.ofColour(
              Saturation.class, SaturationKernel::identity, SaturationKernel::prepare));

  private static final Map<Class<?>, Binding<?>> BY_KIND =
      TABLE.stream().collect(Collectors.toUnmodifiableMap(Binding::kind, Function.identity()));

  private Bindings() {}

  static Binding<?> of(Adjustment adjustment) {
    Binding<?> binding = BY_KIND.get(adjustment.getClass());
    if (binding == null) {
      throw new IllegalArgumentException("no binding for " + adjustment.getClass());
    }
    return binding;
  }

  static List<Tone> tones(List<Adjustment> run) {
    return run.stream().map(adjustment -> of(adjustment).toneOf(adjustment)).toList();
  }
}
