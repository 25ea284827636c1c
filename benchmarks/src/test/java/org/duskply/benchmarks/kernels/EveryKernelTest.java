package org.duskply.benchmarks.kernels;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.mask.Image;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.mask.ShownSteps;
import org.duskply.recipe.mask.Svg;
import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/** Every kernel that is measured still answers, and nothing that a recipe knows is left out. */
class EveryKernelTest {
  private static final List<Class<?>> KINDS =
      List.of(
          Adjusting.class,
          Blending.class,
          Comparing.class,
          Decoding.class,
          Encoding.class,
          Feathering.class,
          Linearising.class,
          Masking.class,
          Median.class,
          Moving.class,
          Resampling.class,
          Tables.class,
          Widening.class);

  /** Each set-up compares its answer with the formula; then it is called at least once. */
  @Test
  void answersAsItsFormulaSays() throws RunnerException {
    System.setProperty("jmh.ignoreLock", "true");
    OptionsBuilder once = new OptionsBuilder();
    KINDS.forEach(kind -> once.include(kind.getName() + "\\."));
    once.forks(0)
        .warmupIterations(0)
        .measurementIterations(1)
        .measurementTime(TimeValue.milliseconds(1))
        .param("pixels", Integer.toString(Fused.CHUNK))
        .shouldFailOnError(true)
        .verbosity(VerboseMode.SILENT);
    Collection<RunResult> results = new Runner(once.build()).run();
    String table = KernelTable.of(results);
    for (Class<?> kind : KINDS) {
      assertThat(table).contains("### " + kind.getSimpleName() + "\n");
    }
    long headLines = 2L * KINDS.size();
    assertThat(table.lines().filter(line -> line.startsWith("|")))
        .hasSize(Math.toIntExact(results.size() + headLines));
    assertThat(KernelPage.of("Measured here.", table))
        .contains("\nMeasured here.\n", "\n## Tables\n")
        .doesNotContain("###");
    assertThat(results).hasSizeGreaterThan(Blend.values().length + Treatment.values().length);
  }

  @Test
  void everyAdjustmentIsMeasured() {
    Set<Class<?>> measured =
        Arrays.stream(Treatment.values())
            .flatMap(treatment -> treatment.adjustments().stream())
            .map(Object::getClass)
            .collect(Collectors.toSet());
    assertThat(measured).isEqualTo(Set.of(Adjustment.class.getPermittedSubclasses()));
  }

  @Test
  void everyMaskKindOfItsOwnIsMeasured() {
    Set<Class<?>> kinds = new HashSet<>(Set.of(MaskKind.class.getPermittedSubclasses()));
    kinds.removeAll(Set.of(Svg.class, Image.class, ShownSteps.class)); // see Masked
    Set<Class<?>> measured =
        Arrays.stream(Masked.values())
            .map(mask -> mask.kind().getClass())
            .collect(Collectors.toSet());
    assertThat(measured).isEqualTo(kinds);
  }
}
