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
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.mask.MaskGraph;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Mix;
import org.duskply.engine.plan.Node;
import org.duskply.engine.step.CropNode;
import org.duskply.engine.step.StepGraph;
import org.duskply.recipe.Alternate;
import org.duskply.recipe.Alternates;
import org.duskply.recipe.Problem;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.Size;
import org.duskply.recipe.StepNames;
import org.duskply.recipe.UsedFrames;

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
    Roots roots = new Roots(folder, engine.allowed());
    FrameSet frames = FrameSet.open(recipe, used(recipes.values()), roots, given, found);
    if (frames == null) {
      found.noticesOrThrow();
      throw new IllegalStateException("A base that could not be opened is a problem");
    }
    FrameInfo base = frames.base().source().info();
    double scale = GridFit.scale(recipe.grid(), base, found) / view.reduction();
    Region canvas = frames.node(recipe.base(), view.reduction()).canvas();
    Size size = new Size(base.width(), base.height());
    Region shown = CropFit.of(recipe, size, canvas, view.reduction(), found);
    List<Problem> notices = found.noticesOrThrow();

    Map<String, FrameNode> nodes = new HashMap<>();
    StepGraph graph =
        new StepGraph(
            name -> node(name, nodes, frames),
            new MaskGraph(recipe.masks(), scale),
            frames.working());
    Map<String, Version> versions = new LinkedHashMap<>();
    recipes.forEach((name, what) -> versions.put(name, version(name, what, graph, canvas, shown)));
    Node compared = cropped(over(nodes, frames), canvas, shown);
    return new PlannedComposite(engine, this, frames, versions, canvas, shown, compared, notices);
  }

  /** The frame that before/after compares with, over the base where it is transparent. */
  private Node over(Map<String, FrameNode> nodes, FrameSet frames) {
    FrameNode frame = node(recipe.before(), nodes, frames);
    return frame.planes() == 3
        ? frame
        : new Mix(node(recipe.base(), nodes, frames), frame, null, frame, 1);
  }

  private FrameNode node(String name, Map<String, FrameNode> nodes, FrameSet frames) {
    return nodes.computeIfAbsent(name, n -> frames.node(n, view.reduction()));
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
}
