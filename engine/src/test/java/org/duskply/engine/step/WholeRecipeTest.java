package org.duskply.engine.step;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.RegionEvaluator;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.RandomSteps;
import org.duskply.engine.testing.reference.Estimate;
import org.duskply.engine.testing.reference.PlainCompositor;
import org.duskply.recipe.step.Step;
import org.junit.jupiter.api.Test;

/**
 * Whole recipes of all verbs, groups, masks and modes: what the engine makes of them in float,
 * fused and by runs, is what the formulas make of them in plain double, within what roundings can
 * do.
 */
class WholeRecipeTest {
  private static final int WIDTH = 15;
  private static final int HEIGHT = 11;
  private static final Region CANVAS = Region.ofSize(WIDTH, HEIGHT);
  private static final int RECIPES = 50;

  private static Planes evaluated(Node node) {
    Plan plan = Plan.of(List.of(node), PlanSettings.DEFAULT);
    try (RegionEvaluator evaluator = new RegionEvaluator(plan, 1 << 20)) {
      return evaluator.compute(node, CANVAS, Stop.NEVER);
    }
  }

  @Test
  void floatsAgreeWithDoubles() {
    long samples = 0;
    long tight = 0;
    TreeSet<String> verbs = new TreeSet<>();
    for (int seed = 0; seed < RECIPES; seed++) {
      RandomSteps random = new RandomSteps(seed, WIDTH, HEIGHT);
      List<Step> steps = random.steps(1 + seed % 5);
      steps.forEach(step -> verbs.add(step.verb().getClass().getSimpleName()));
      StepGraph graph = random.graph();
      StepGraph.Made made = graph.build("f0", steps, List.of());
      Planes picture = evaluated(made.picture());
      PlainCompositor plain = compositor(random, made.maskOfStep());
      for (int y = 0; y < HEIGHT; y++) {
        for (int x = 0; x < WIDTH; x++) {
          Estimate want = plain.pixel("f0", steps, x, y);
          for (int c = 0; c < 3; c++) {
            double got = picture.plane(c)[picture.at(x, y)];
            String what = "seed " + seed + " at " + x + ", " + y + ", " + c + " of " + steps;
            Close.within(what, got, want.colour()[c], want.off()[c]);
            samples++;
            tight += want.off()[c] < 1e-4 * Math.max(1, Math.abs(want.colour()[c])) ? 1 : 0;
          }
        }
      }
    }
    // The bounds say something: nearly all lie far below what an eye or a 16-bit code can tell.
    // (Not all: at the very black where color-dodge with white jumps from 0 to 1, they must not.)
    assertThat((double) tight / samples).isGreaterThan(0.9);
    assertThat(verbs).hasSize(7);
  }

  private static PlainCompositor compositor(RandomSteps random, Map<String, Node> maskOfStep) {
    Map<String, Planes> frames = new HashMap<>();
    random.frames().forEach((name, node) -> frames.put(name, evaluated(node)));
    Map<String, Planes> masks = new HashMap<>();
    maskOfStep.forEach((path, node) -> masks.put(path, evaluated(node)));
    return new PlainCompositor(
        RandomSteps.WORKING,
        (name, x, y) -> sample(frames.get(name), x, y),
        (path, x, y) -> {
          Planes mask = masks.get(path);
          return mask == null ? 1 : mask.plane(0)[mask.at(x, y)];
        },
        WIDTH,
        HEIGHT);
  }

  private static double[] sample(Planes frame, int x, int y) {
    double[] sample = {0, 0, 0, 1};
    for (int p = 0; p < frame.count(); p++) {
      sample[p] = frame.plane(p)[frame.at(x, y)];
    }
    return sample;
  }
}
