package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.plan.Rule;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.Job;
import org.duskply.engine.render.Output;
import org.duskply.engine.render.Store;
import org.duskply.engine.testing.Collected;
import org.duskply.engine.testing.PictureBits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Masks that reach beyond the canvas, of which whole bands are known without being made. */
@Tag("bits")
class KnownMasksTest extends ThreeFrames {
  private static final PlanSettings ALL = new PlanSettings(16, 50, true).without(Rule.INLINE);

  private record Made(Planes picture, int bands) {}

  @ParameterizedTest
  @ValueSource(
      strings = {
        "polygon: \"-500,-500 500,-500 500,100.5 -500,100.5\", feather: 4", // a level edge
        "polygon: \"-500,96 500,96 500,224 -500,224\", feather: 3", // on the edge of a band
        "polygon: \"-500,-500 500,-500 500,90 20,90 20,150 -500,150\", feather: 4", // a step
        "polygon: \"-500,-900 500,-900 500,170 -500,150\", feather: 9", // nearly level
        "polygon: \"-900,-900 900,-900 900,900 -900,900\", feather: 40" // all of it
      })
  void areLikeThoseThatAreMade(String mask) {
    Path recipe = desk(40, 320).recipe(HEAD + "steps: [ { lay: a, mask: { " + mask + " } } ]\n");
    Made known = made(recipe, ALL);
    Made plain = made(recipe, ALL.without(Rule.KNOWN));
    PictureBits.same(plain.picture, known.picture, mask);
    assertThat(known.bands).as("bands of stages, outlines among them").isLessThan(plain.bands);
  }

  private static Made made(Path recipe, PlanSettings settings) {
    ExecutorService pool = Executors.newFixedThreadPool(2);
    try (Engine engine = Engine.builder().settings(settings).build();
        PlannedComposite composite = (PlannedComposite) engine.open(recipe)) {
      Region canvas = composite.canvas();
      Collected sink = new Collected(canvas);
      List<Output> outputs = List.of(new Output(composite.version().picture(), canvas, sink));
      Plan plan = composite.plan(outputs);
      try (Job job = new Job(plan, outputs, settings.bandRows(), Store.NONE)) {
        job.run(pool, 2, engine.memory(), share -> {}, Stop.NEVER);
        int bands = IntStream.range(0, plan.stages().size()).map(job.counters()::bandsRun).sum();
        return new Made(sink.picture(), bands);
      }
    } finally {
      pool.shutdown();
    }
  }
}
