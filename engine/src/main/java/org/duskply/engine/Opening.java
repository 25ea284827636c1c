package org.duskply.engine;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.mask.MaskGraph;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Node;
import org.duskply.engine.step.StepGraph;
import org.duskply.recipe.Problem;
import org.duskply.recipe.Recipe;
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
    List<Step> steps = Selection.of(recipe, view);
    Set<String> used = Selection.framesOf(steps);
    Roots roots = new Roots(folder, engine.allowed(), engine.tolerant());
    FrameSet frames = FrameSet.open(recipe, used, roots, given, found);
    if (frames == null) {
      found.noticesOrThrow();
      throw new IllegalStateException("A base that could not be opened is a problem");
    }
    FrameInfo base = frames.base().source().info();
    double scale = GridFit.scale(recipe.grid(), base, found) / view.reduction();
    List<Problem> notices = found.noticesOrThrow();

    Map<String, FrameNode> nodes = new HashMap<>();
    StepGraph graph =
        new StepGraph(
            name -> nodes.computeIfAbsent(name, n -> frames.node(n, view.reduction())),
            new MaskGraph(recipe.masks(), scale),
            frames.working());
    Node picture = graph.build(recipe.base(), steps);
    return new PlannedComposite(engine, this, frames, steps, picture, graph.maskOfStep(), notices);
  }
}
