package org.duskply.engine;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.mask.Ground;
import org.duskply.engine.mask.MaskGraph;
import org.duskply.engine.mask.Outline;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Mix;
import org.duskply.engine.plan.Node;
import org.duskply.engine.step.Bounds;
import org.duskply.engine.step.CropNode;
import org.duskply.engine.step.StepGraph;
import org.duskply.recipe.Alternate;
import org.duskply.recipe.Alternates;
import org.duskply.recipe.Crop;
import org.duskply.recipe.Problem;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.Size;
import org.duskply.recipe.StepNames;
import org.duskply.recipe.UsedFrames;
import org.duskply.recipe.mask.Image;
import org.duskply.recipe.mask.Svg;
import org.duskply.recipe.step.Step;

/**
 * From a recipe to a composite: opens the frames, checks them against each other, and builds the
 * graph.
 *
 * @param before notices of the reader
 * @param stem the recipe file's name without its ending
 */
record Opening(
    Recipe recipe,
    List<Problem> before,
    String stem,
    Path folder,
    View view,
    Map<String, MemoryFrame> given) {

  Composite open(Engine engine) {
    Found found = new Found(recipe, before);
    Map<String, Recipe> recipes = recipes();
    tellLeftOut(recipes.values().iterator().next(), found);
    Roots roots = new Roots(folder, engine.allowed(), engine.tolerant());
    FrameSet frames = FrameSet.open(recipe, used(recipes.values()), roots, given, found);
    List<Map<String, Svg>> drawings = recipes.values().stream().map(MasksUsed::drawn).toList();
    List<Map<String, Image>> paintings = recipes.values().stream().map(MasksUsed::painted).toList();
    if (frames == null) {
      Drawings.check(drawings, roots, found);
      found.noticesOrThrow();
      throw new IllegalStateException("A base that could not be opened is a problem");
    }
    FrameInfo base = frames.base().source().info();
    double scale = GridFit.scale(recipe.grid(), base, found) / view.reduction();
    Region canvas = frames.node(recipe.base(), view.reduction()).canvas();
    Size size = new Size(base.width(), base.height());
    Region shown = CropFit.of(recipe, size, canvas, view.reduction(), found);
    Ground ground = ground(size, canvas, scale);
    Map<Svg, Outline> drawn = Drawings.open(drawings, roots, ground, found);
    PaintedMasks painted = PaintedMasks.open(paintings, recipe.grid(), size, roots, found);
    if (view.reduction() == 1) {
      Sizes.tellEnlarged(recipe, shown, found);
    }
    found.noticesOrThrow();

    Map<String, FrameNode> nodes = new HashMap<>();
    Function<String, FrameNode> nodeOf =
        name -> nodes.computeIfAbsent(name, n -> frames.node(n, view.reduction()));
    MaskInputs inputs = new MaskInputs(recipe, nodeOf, frames.working(), painted, view.reduction());
    StepGraph graph =
        new StepGraph(
            nodeOf,
            new MaskGraph(recipe.masks(), ground, drawn, inputs),
            frames.working(),
            Bounds.ofSize(ground.width(), ground.height()),
            finished(ground),
            scale);
    Map<String, Version> versions = new LinkedHashMap<>();
    recipes.forEach((name, what) -> versions.put(name, version(name, what, graph, canvas, shown)));
    MaskChecks.check(versions.values(), canvas, found);
    List<Problem> notices = found.noticesOrThrow();
    Node compared = cropped(over(nodeOf), canvas, shown);
    return new PlannedComposite(engine, this, frames, versions, canvas, shown, compared, notices);
  }

  /** The frame that before/after compares with, over the base where it is transparent. */
  private Node over(Function<String, FrameNode> nodeOf) {
    FrameNode frame = nodeOf.apply(recipe.before());
    return frame.planes() == 3
        ? frame
        : new Mix(nodeOf.apply(recipe.base()), frame, null, frame, 1);
  }

  private static Node cropped(Node picture, Region canvas, Region shown) {
    return shown.equals(canvas) ? picture : new CropNode(picture, shown);
  }

  /** What is done for each alternate that may be asked for: the picture that is shown first. */
  private Map<String, Recipe> recipes() {
    StepNames names = StepNames.of(recipe);
    Map<String, Recipe> recipes = new LinkedHashMap<>();
    for (String name : alternates()) {
      recipes.put(name, Selection.of(Alternates.apply(recipe, name), names, view));
    }
    return recipes;
  }

  /** Says of the one step that is to be seen that it is not done, and so cannot be. */
  private void tellLeftOut(Recipe first, Found found) {
    String only = view.only();
    if (only == null) {
      return;
    }
    String path = StepNames.of(recipe).path(only).orElseThrow();
    for (int end = path.indexOf('#'); end >= 0; end = path.indexOf('#', end + 1)) {
      int slash = path.indexOf('/', end);
      String around = slash < 0 ? path : path.substring(0, slash);
      Step step = StepNames.step(first, around);
      if (step.skip() || step.opacity() == 0) {
        found.notice(
            around,
            "Of the step "
                + only
                + " alone nothing is seen but the base: "
                + (step.skip() ? "it is left out." : "its opacity is 0."));
        return;
      }
    }
  }

  private List<String> alternates() {
    String one = view.alternate();
    List<String> all = new ArrayList<>(List.of(Alternate.MAIN));
    all.addAll(recipe.alternates().keySet());
    if (one != null && !all.contains(one)) {
      throw new UnknownNameException(
          "The recipe has no alternate "
              + one
              + Alternates.nearest(recipe, one)
                  .map(near -> "; did you mean " + near + "?")
                  .orElse("; it has " + String.join(", ", all) + "."));
    }
    return one == null ? all : List.of(one);
  }

  private static Set<String> used(Collection<Recipe> recipes) {
    Set<String> used = new LinkedHashSet<>();
    recipes.forEach(what -> used.addAll(UsedFrames.of(what)));
    return used;
  }

  private static Version version(
      String name, Recipe what, StepGraph graph, Region canvas, Region shown) {
    StepGraph.Made made = graph.build(what.base(), what.steps(), what.finish().steps());
    return new Version(name, what, cropped(made.picture(), canvas, shown), made.maskOfStep());
  }

  /** The grid on which the recipe's shapes were drawn, on the canvas of this view. */
  private Ground ground(Size base, Region canvas, double scale) {
    Size grid = recipe.grid() == null ? base : recipe.grid();
    return new Ground(grid.width(), grid.height(), scale, canvas);
  }

  /** What of the grid is left in the finished picture. */
  private Bounds finished(Ground ground) {
    Crop crop = recipe.finish().crop();
    return crop == null
        ? Bounds.ofSize(ground.width(), ground.height())
        : new Bounds(crop.left(), crop.top(), crop.width(), crop.height());
  }
}
