package org.duskply.engine.testing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.function.Supplier;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.frame.FrameSource.Access;
import org.duskply.engine.mask.Ground;
import org.duskply.engine.mask.MaskGraph;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Node;
import org.duskply.engine.step.Bounds;
import org.duskply.engine.step.StepGraph;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.CurvePoint;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.adjust.Power;
import org.duskply.recipe.adjust.Saturation;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.mask.Polygon;
import org.duskply.recipe.step.Adjust;
import org.duskply.recipe.step.Blend;
import org.duskply.recipe.step.Burn;
import org.duskply.recipe.step.Compare;
import org.duskply.recipe.step.Dodge;
import org.duskply.recipe.step.Falloff;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Shade;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;
import org.duskply.recipe.step.Vignette;

/**
 * Steps of every verb drawn by a seed, with masks, groups in groups and frames of noise, one of
 * them transparent in places; as they stand in a recipe, and as the graph that is made of them.
 */
public final class RandomSteps {
  /** The space that the frames arrive in. */
  public static final ColourSpace WORKING = ColourSpace.of(NamedSpace.SRGB);

  private static final List<String> FRAMES = List.of("f1", "f2", "f3", "f4");

  private final Random random;
  private final int width;
  private final int height;
  private final Map<String, FrameNode> frames = new LinkedHashMap<>();

  /** Steps for a canvas of {@code width × height}. */
  public RandomSteps(long seed, int width, int height) {
    this.random = new Random(seed);
    this.width = width;
    this.height = height;
    for (int i = 0; i < 5; i++) {
      Access access = i % 2 == 0 ? Access.RANDOM : Access.FORWARD;
      frames.put("f" + i, frame(seed * 100 + i, i == 3 ? 4 : 3, access));
    }
  }

  private FrameNode frame(long seed, int channels, Access access) {
    NoiseFrame source =
        new NoiseFrame(seed, width, height, channels, 1 + random.nextInt(20), access);
    return source.node(random.nextInt(3) - 1);
  }

  /** The frames: f0, from which the picture starts, to f4. */
  public Map<String, FrameNode> frames() {
    return frames;
  }

  /** Another few steps. */
  public List<Step> steps(int count) {
    return some(count, count, () -> step(2));
  }

  /** A picture of so many steps. */
  public Node picture(int count) {
    return graph().build("f0", steps(count), List.of()).picture();
  }

  /** What makes a picture of steps. */
  public StepGraph graph() {
    Ground ground = new Ground(width, height, 1, Region.ofSize(width, height));
    return new StepGraph(
        name -> Objects.requireNonNull(frames.get(name), name),
        new MaskGraph(Map.of(), ground, Map.of(), FramesOnly.NONE),
        WORKING,
        Bounds.ofSize(width, height),
        Bounds.ofSize(width, height),
        1);
  }

  private Step step(int depth) {
    MaskUse mask = random.nextInt(4) == 0 ? null : new MaskUse.Inline(mask());
    double opacity = any(1.0, 1.0, 0.5, 0.3);
    return new Step(null, null, null, mask, opacity, false, verb(depth), Map.of());
  }

  private Verb verb(int depth) {
    switch (random.nextInt(depth > 0 ? 9 : 7)) {
      case 0:
        return new Pop(frame(), any(Compare.values()), treat());
      case 1:
      case 2:
        return new Lay(frame(), any(Blend.values()), any(Axis.values()), treat());
      case 3:
        return new Adjust(some(1, 3, this::adjustment));
      case 4:
        return new Dodge(shade());
      case 5:
        return new Burn(shade());
      case 6:
        return new Vignette(falloff());
      default:
        return new Group(some(1, 3, () -> step(depth - 1)), some(0, 2, this::adjustment));
    }
  }

  private String frame() {
    return FRAMES.get(random.nextInt(FRAMES.size()));
  }

  private Shade shade() {
    return new Shade(random.nextInt(10) / 8.0, random.nextBoolean() ? gel() : null);
  }

  private Falloff falloff() {
    double begins = random.nextInt(4) / 4.0;
    double full = begins + random.nextInt(4) / 4.0;
    Point centre =
        random.nextBoolean() ? new Point(random.nextInt(width), random.nextInt(height)) : null;
    return new Falloff(random.nextInt(9) / 4.0 - 1, begins, full, centre);
  }

  private List<Adjustment> treat() {
    return random.nextInt(3) == 0 ? some(1, 2, this::adjustment) : List.of();
  }

  private Adjustment adjustment() {
    return switch (random.nextInt(6)) {
      case 0 -> new Exposure(random.nextInt(9) / 4.0 - 1);
      case 1 -> new Saturation(any(0.0, 0.7, 1.3));
      case 2 -> new Contrast(any(-0.25, 0.25), 0.18, any(Channel.RGB, Channel.LUMINANCE));
      case 3 -> new Power(any(0.9, 1.1));
      case 4 ->
          new Curve(
              List.of(
                  new CurvePoint(0, any(0.0, 0.02)),
                  new CurvePoint(0.4, 0.45),
                  new CurvePoint(1, 0.97)),
              any(Channel.RGB, Channel.LUMINANCE, Channel.GREEN),
              any(Axis.values()));
      default -> gel();
    };
  }

  private Gel gel() {
    return new Gel(any(-80.0, 40.0, 160.0), null, null, any(0.0, 5.0));
  }

  private Mask mask() {
    List<Point> points =
        some(
            3,
            6,
            () -> new Point(random.nextInt(width + 20) - 10, random.nextInt(8 * height) / 8.0 - 2));
    return new Mask(
        new Polygon(points, any(FillRule.values())),
        List.of(),
        List.of(),
        any(0.0, 0.0, 2.5, -1.5),
        any(0.0, 1.5, 5.0),
        random.nextInt(5) == 0,
        any(1.0, 1.0, 0.6),
        Map.of());
  }

  private <V> List<V> some(int least, int most, Supplier<V> value) {
    List<V> list = new ArrayList<>();
    for (int i = least + random.nextInt(most - least + 1); i > 0; i--) {
      list.add(value.get());
    }
    return list;
  }

  @SafeVarargs
  private <V> V any(V... values) {
    return values[random.nextInt(values.length)];
  }
}
