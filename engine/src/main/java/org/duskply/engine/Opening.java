package org.duskply.engine;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.mask.Ground;
import org.duskply.engine.mask.MaskGraph;
import org.duskply.engine.mask.Outline;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Node;
import org.duskply.engine.step.StepGraph;
import org.duskply.recipe.Problem;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.Size;
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
    List<Step> steps = Selection.of(recipe, view);
    Set<String> used = Selection.framesOf(steps);
    Roots roots = new Roots(folder, engine.allowed());
    FrameSet frames = FrameSet.open(recipe, used, roots, given, found);
    Map<String, Svg> drawings = MasksUsed.drawn(recipe.masks(), steps);
    if (frames == null) {
      Drawings.check(drawings, roots, found);
      found.noticesOrThrow();
      throw new IllegalStateException("A base that could not be opened is a problem");
    }
    FrameInfo base = frames.base().source().info();
    double scale = GridFit.scale(recipe.grid(), base, found) / view.reduction();
    Ground ground = ground(frames, base, scale);
    Map<Svg, Outline> drawn = Drawings.open(drawings, roots, ground, found);
    List<Problem> notices = found.noticesOrThrow();

    Map<String, FrameNode> nodes = new HashMap<>();
    StepGraph graph =
        new StepGraph(
            name -> nodes.computeIfAbsent(name, n -> frames.node(n, view.reduction())),
            new MaskGraph(recipe.masks(), ground, drawn),
            frames.working());
    Node picture = graph.build(recipe.base(), steps);
    return new PlannedComposite(engine, this, frames, steps, picture, graph.maskOfStep(), notices);
  }

  /** The grid on which the recipe's shapes were drawn, on the canvas of this view. */
  private Ground ground(FrameSet frames, FrameInfo base, double scale) {
    Size grid = recipe.grid() == null ? new Size(base.width(), base.height()) : recipe.grid();
    return new Ground(
        grid.width(), grid.height(), scale, frames.node(recipe.base(), view.reduction()).canvas());
  }
}
