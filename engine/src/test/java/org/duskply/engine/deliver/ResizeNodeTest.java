package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.duskply.engine.filter.Resampler;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.RegionEvaluator;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.RandomGraph;
import org.duskply.recipe.Size;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("bits")
class ResizeNodeTest {
  private static final int WIDTH = 97;
  private static final int HEIGHT = 61;

  private final Node picture = new RandomGraph(5, WIDTH, HEIGHT).picture(3);

  private static Planes evaluate(Node node, Region region) {
    Plan plan = Plan.of(List.of(node), new PlanSettings(8, 512, true));
    try (RegionEvaluator evaluator = new RegionEvaluator(plan, 1 << 20)) {
      return evaluator.compute(node, region, Stop.NEVER);
    }
  }

  /** A crop at its own size is the picture's bits in another place. */
  @Test
  void aCropCopiesBits() {
    Extent extent = Extent.cropped(WIDTH, HEIGHT, new Size(30, HEIGHT));
    Planes crop = evaluate(new ResizeNode(picture, extent), Region.ofSize(30, HEIGHT));
    assertThat(extent.part().left()).isEqualTo(33);
    PictureBits.same(evaluate(picture, extent.part()), crop.moved(33, 0), "crop");
  }

  /** A part resized is that part, cut out as a picture of its own, resized. */
  @Test
  void aPartIsAPictureOfItsOwn() {
    for (Size size : List.of(new Size(20, 20), new Size(120, 40), new Size(1, 1))) {
      Extent extent = Extent.cropped(WIDTH, HEIGHT, size);
      Region part = extent.part();
      Planes cut = evaluate(picture, part).moved(-part.left(), -part.top());
      Region out = Region.ofSize(size.width(), size.height());
      Planes expected = new Planes(out, 3);
      Resampler.of(part.width(), part.height(), size.width(), size.height()).apply(cut, expected);
      PictureBits.same(expected, evaluate(new ResizeNode(picture, extent), out), "" + size);
    }
  }

  @Test
  void anyRectangleHasTheSameBits() {
    Extent extent = Extent.cropped(WIDTH, HEIGHT, new Size(40, 50));
    ResizeNode node = new ResizeNode(picture, extent);
    Planes whole = evaluate(node, Region.ofSize(40, 50));
    Random random = new Random(2);
    for (int i = 0; i < 40; i++) {
      int left = random.nextInt(40);
      int top = random.nextInt(50);
      Region part =
          new Region(
              left, top, left + 1 + random.nextInt(40 - left), top + 1 + random.nextInt(50 - top));
      assertThat(extent.part().contains(node.needs(0, part))).isTrue();
      PictureBits.same(whole, evaluate(node, part), "" + part);
    }
  }
}
