package org.duskply.engine.step;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.duskply.engine.adjust.AdjustKernel;
import org.duskply.engine.adjust.Adjustments;
import org.duskply.engine.blend.Blends;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.mask.MaskGraph;
import org.duskply.engine.mask.StepShows;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Mix;
import org.duskply.engine.plan.Node;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.step.Adjust;
import org.duskply.recipe.step.Blend;
import org.duskply.recipe.step.Burn;
import org.duskply.recipe.step.Compare;
import org.duskply.recipe.step.Dodge;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;
import org.duskply.recipe.step.Vignette;
import org.jspecify.annotations.Nullable;

/**
 * A recipe's steps as nodes: each is a function of the picture below it, mixed in by {@link Mix}.
 * Steps that are skipped or have opacity 0 leave nothing behind. One instance serves one thread.
 */
public final class StepGraph {
  private static final String FINISH = "finish/steps";

  private final Function<String, FrameNode> frames;
  private final MaskGraph masks;
  private final ColourSpace working;
  private final Bounds grid;
  private final Bounds finished;
  private final double scale;
  private final Map<Treated, Node> treated = new HashMap<>();
  private final Map<Place, Laid> laid = new HashMap<>();
  private final Map<List<Adjustment>, AdjustKernel> kernels = new HashMap<>();
  private List<Note> notes = new ArrayList<>();
  private StepShows shows = new StepShows();

  /**
   * A graph to be built.
   *
   * @param frames the node of each frame by its name, the same one each time
   * @param masks the recipe's masks
   * @param working the linear space that frames arrive in
   * @param grid all of the grid, by which vignettes among the steps are measured
   * @param finished what of the grid the finished picture shows, for those among its last steps
   * @param scale pixels of the canvas for one of the grid
   */
  public StepGraph(
      Function<String, FrameNode> frames,
      MaskGraph masks,
      ColourSpace working,
      Bounds grid,
      Bounds finished,
      double scale) {
    this.frames = frames;
    this.masks = masks;
    this.working = working;
    this.grid = grid;
    this.finished = finished;
    this.scale = scale;
  }

  /**
   * The picture that steps make of a frame. Asked again for other steps, as alternates are, it
   * gives the nodes that it gave before as far as the steps are the same.
   *
   * @param base name of the frame
   * @param finish steps done after the others
   */
  public Made build(String base, List<Step> steps, List<Step> finish) {
    notes = new ArrayList<>();
    shows = masks.begin();
    Node composed = fold(frames.apply(base), steps, "steps");
    Node picture = fold(composed, finish, FINISH);
    Map<String, Node> maskOfStep = new LinkedHashMap<>();
    for (Note note : notes) {
      if (note.mask() != null) {
        maskOfStep.put(note.path(), note.mask());
      }
    }
    return new Made(picture, maskOfStep);
  }

  /** The picture that {@code steps} make of the frame {@code base}. */
  public Node build(String base, List<Step> steps) {
    return build(base, steps, List.of()).picture();
  }

  /**
   * What was built.
   *
   * @param picture after the last step
   * @param maskOfStep the mask of each step that has one and is done, by the step's path
   */
  public record Made(Node picture, Map<String, Node> maskOfStep) {}

  private Node fold(Node below, List<Step> steps, String path) {
    Node picture = below;
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      if (!step.skip() && step.opacity() > 0) {
        picture = placed(new Place(picture, step, path + "/#" + (i + 1)));
      }
    }
    return picture;
  }

  /** A step in its place: its mix, the same one each time. */
  private Node placed(Place place) {
    Laid known = laid.get(place);
    if (known == null) {
      List<Note> around = notes;
      notes = new ArrayList<>();
      Node mix = mix(place.below(), place.step(), place.path());
      known = new Laid(mix, notes);
      notes = around;
      laid.put(place, known);
    } else {
      known.notes().forEach(this::show);
    }
    notes.addAll(known.notes());
    return known.mix();
  }

  private Node mix(Node below, Step step, String path) {
    Node made = make(below, step.verb(), path);
    MaskUse use = step.mask();
    Node mask = use == null ? null : masks.of(use, below);
    Note note = new Note(path, step, mask);
    notes.add(note);
    show(note);
    return new Mix(below, made, mask, covering(step.verb()), (float) step.opacity());
  }

  /** Tells masks that may ask where a step shows. */
  private void show(Note note) {
    Step step = note.step();
    if (step.verb() instanceof Group group) {
      shows.group(note.path(), group.steps().size(), note.mask(), step.opacity());
    } else {
      shows.step(note.path(), note.mask(), step.opacity());
    }
  }

  /** The table of verbs: one line each. */
  private Node make(Node below, Verb verb, String path) {
    if (verb instanceof Pop pop) {
      return popped(below, incoming(pop.frame(), pop.treat()), pop.compare());
    }
    if (verb instanceof Lay lay) {
      return laid(below, incoming(lay.frame(), lay.treat()), lay.blend(), lay.blendIn());
    }
    if (verb instanceof Adjust adjust) {
      return adjusted(below, adjust.adjustments());
    }
    if (verb instanceof Dodge dodge) {
      return adjusted(below, dodge.adjustments());
    }
    if (verb instanceof Burn burn) {
      return adjusted(below, burn.adjustments());
    }
    if (verb instanceof Vignette vignette) {
      Bounds bounds = path.startsWith(FINISH) ? finished : grid;
      return VignetteNode.prepare(below, vignette.falloff(), bounds, scale);
    }
    return grouped(below, (Group) verb, path + "/group");
  }

  private Node popped(Node below, Node frame, Compare compare) {
    return compare == Compare.CHANNELS
        ? blend(below, frame, Blend.LIGHTEN)
        : new BlendNode(
            below, frame, "brighter in " + working, Blends.brighter(working.luminance()), false);
  }

  /** A mode that only chooses gives the same on either axis: it is done without the way there. */
  private static Node laid(Node below, Node frame, Blend mode, Axis in) {
    if (mode == Blend.NORMAL) {
      return frame;
    }
    if (in == Axis.LINEAR || mode.choosesOnly()) {
      return blend(below, frame, mode);
    }
    return EncodedAxisNode.linear(
        blend(EncodedAxisNode.encoded(below), EncodedAxisNode.encoded(frame), mode));
  }

  private static Node blend(Node below, Node frame, Blend mode) {
    return new BlendNode(below, frame, mode.key(), Blends.of(mode), !mode.choosesOnly());
  }

  private Node grouped(Node below, Group group, String path) {
    Node folded = fold(below, group.steps(), path);
    if (group.treat().stream().allMatch(Shape::isIdentityOf)) {
      return folded;
    }
    Node added = adjusted(new AddedLightNode(below, folded), group.treat());
    return new RelitNode(below, folded, added);
  }

  private Node incoming(String name, List<Adjustment> treat) {
    FrameNode frame = frames.apply(name);
    return treat.isEmpty()
        ? frame
        : treated.computeIfAbsent(new Treated(frame, treat), t -> adjusted(frame, treat));
  }

  private Node adjusted(Node input, List<Adjustment> adjustments) {
    AdjustKernel kernel =
        kernels.computeIfAbsent(
            List.copyOf(adjustments), list -> Adjustments.prepare(list, working));
    return new AdjustNode(input, kernel, adjustments + " in " + working);
  }

  /** How many different lists of adjustments have been prepared, which is what takes time. */
  int prepared() {
    return kernels.size();
  }

  private @Nullable FrameNode covering(Verb verb) {
    String name = verb instanceof Pop pop ? pop.frame() : verb instanceof Lay l ? l.frame() : null;
    FrameNode frame = name == null ? null : frames.apply(name);
    return frame != null && frame.planes() == 4 ? frame : null;
  }

  /** A frame with the adjustments that it is treated with. */
  private record Treated(FrameNode frame, List<Adjustment> treat) {
    Treated {
      treat = new ArrayList<>(treat);
    }
  }

  /** A step over a picture; nodes are told apart by identity. */
  private record Place(Node below, Step step, String path) {}

  /** What is to be remembered of a step that is done. */
  private record Note(String path, Step step, @Nullable Node mask) {}

  /** A step done, with the notes of those inside it and its own. */
  private record Laid(Node mix, List<Note> notes) {}
}
