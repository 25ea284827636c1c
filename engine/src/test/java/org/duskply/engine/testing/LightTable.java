package org.duskply.engine.testing;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.frame.Lineariser;
import org.duskply.engine.mask.Ground;
import org.duskply.engine.mask.MaskGraph;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.RegionEvaluator;
import org.duskply.engine.step.Bounds;
import org.duskply.engine.step.StepGraph;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.RecipeReader;
import org.duskply.recipe.step.Step;

/** Frames of given light, and what the engine makes of them by a recipe's steps. */
public final class LightTable {
  /** The space that all frames are in. */
  public static final ColourSpace WORKING = ColourSpace.of(NamedSpace.SRGB);

  private final int width;
  private final int height;
  private final Map<String, FrameNode> frames = new LinkedHashMap<>();

  /** A table for frames of that size; the first frame put on it is the base. */
  public LightTable(int width, int height) {
    this.width = width;
    this.height = height;
  }

  /** Puts a frame on the table. */
  public LightTable frame(String name, LinearFrame.Value value) {
    return put(name, new LinearFrame(width, height, 3, value));
  }

  /** Puts a frame on the table whose fourth channel is its coverage. */
  public LightTable covered(String name, LinearFrame.Value value) {
    return put(name, new LinearFrame(width, height, 4, value));
  }

  private LightTable put(String name, LinearFrame frame) {
    Lineariser lineariser = Lineariser.prepare(frame.info(), WORKING.linear(), WORKING, 0);
    frames.put(name, new FrameNode(name, frame, lineariser, 1, name, ""));
    return this;
  }

  /** Steps as a recipe has them, one a line after a dash. */
  public List<Step> steps(String text) {
    String list =
        frames.keySet().stream().map(n -> n + ": " + n + ".tif").collect(Collectors.joining(", "));
    String base = frames.keySet().iterator().next();
    return RecipeReader.read(
            "table.yaml",
            "duskply: 1\nbase: " + base + "\nframes: { " + list + " }\nsteps:\n" + text + "\n")
        .steps();
  }

  /** The picture of some steps. */
  public Planes picture(String steps) {
    return picture(steps(steps), Bounds.ofSize(width, height), 1);
  }

  /** The picture of some steps where the grid is not the canvas, or a part of it is shown. */
  public Planes picture(List<Step> steps, Bounds extent, double scale) {
    return evaluated(
        graph(extent, scale).build(frames.keySet().iterator().next(), steps, List.of()).picture());
  }

  /** A graph to be built of the frames on the table, on a grid of their size. */
  public StepGraph graph() {
    return graph(Bounds.ofSize(width, height), 1);
  }

  private StepGraph graph(Bounds extent, double scale) {
    Ground ground =
        new Ground(extent.width(), extent.height(), scale, Region.ofSize(width, height));
    return new StepGraph(
        name -> Objects.requireNonNull(frames.get(name), name),
        new MaskGraph(Map.of(), ground, Map.of(), FramesOnly.NONE),
        WORKING,
        extent,
        extent,
        scale);
  }

  private Ground ground(double scale) {
    return new Ground(width / scale, height / scale, scale, Region.ofSize(width, height));
  }

  /** All pixels of a node. */
  public Planes evaluated(Node node) {
    Plan plan = Plan.of(List.of(node), PlanSettings.DEFAULT);
    try (RegionEvaluator evaluator = new RegionEvaluator(plan, 1 << 20)) {
      return evaluator.compute(node, Region.ofSize(width, height), Stop.NEVER);
    }
  }

  /** One pixel of a picture. */
  public static float[] pixel(Planes picture, int x, int y) {
    int at = picture.at(x, y);
    return new float[] {picture.plane(0)[at], picture.plane(1)[at], picture.plane(2)[at]};
  }
}
