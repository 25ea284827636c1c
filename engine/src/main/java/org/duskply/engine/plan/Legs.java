package org.duskply.engine.plan;

import java.util.Arrays;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.duskply.engine.pixel.Region;
import org.jspecify.annotations.Nullable;

/**
 * Cuts a long run of steps into <em>legs</em>. A run over a band needs all that its steps read at
 * the same time; where a picture on the way is finished first, what was read for it is let go
 * before the next leg's is fetched. So the memory that a band takes does not grow with the number
 * of steps in a run.
 *
 * <p>What a step reads is weighed by where it shows: steps that never meet in a band, or in small
 * parts of one, are not worth a picture between them.
 */
final class Legs {
  private static final int ROWS = 64; // looked at as one

  private final Set<Node> staged;
  private final int most;
  private final Region canvas;
  private final Set<Node> ends = Collections.newSetFromMap(new IdentityHashMap<>());

  private Legs(Set<Node> staged, int most, Region canvas) {
    this.staged = staged;
    this.most = most;
    this.canvas = canvas;
  }

  /**
   * Which pictures on the way are finished, so that what lies between one and the next reads about
   * {@code most} frames and masks of full width at most, wherever a band lies.
   *
   * @param order all nodes, inputs first
   * @param staged the stages
   * @return the pictures that are to be stages beside them
   */
  static Set<Node> ends(List<Node> order, int most, Set<Node> staged) {
    Region canvas = Region.EMPTY;
    for (Node node : order) {
      canvas = node instanceof FrameNode frame ? canvas.hull(frame.canvas()) : canvas;
    }
    Legs legs = new Legs(staged, most, canvas);
    for (Node node : order) {
      if (node instanceof PointNode && node.planes() > 1 && staged.contains(node)) {
        legs.cut(node);
      }
    }
    return legs.ends;
  }

  /** Cuts the run that makes a stage. */
  private void cut(Node stage) {
    List<Node> run = run(stage);
    Set<Node> unmasked = unmasked(stage, run);
    double[] leg = new double[canvas.empty() ? 0 : (canvas.height() - 1) / ROWS + 1];
    double[] behind = leg.clone(); // what of it is read behind the last picture that could end it
    @Nullable Node end = null; // that picture
    int read = 0; // leaves since the last mix
    for (Node node : run) {
      if (isLeaf(node, stage)) {
        read++;
      } else if (node instanceof Mix mix) {
        if (!fits(leg, mix, read) && end != null) {
          ends.add(end);
          leg = behind.clone();
          end = null;
        }
        add(leg, mix, read);
        add(behind, mix, read);
        read = 0;
        if (mix != stage && unmasked.contains(mix)) {
          end = mix;
          Arrays.fill(behind, 0);
        }
      }
    }
  }

  private boolean isLeaf(Node node, Node stage) {
    return node instanceof FrameNode || (node != stage && staged.contains(node));
  }

  private boolean fits(double[] leg, Mix mix, int leaves) {
    double[] with = leg.clone();
    add(with, mix, leaves);
    return Arrays.stream(with).allMatch(sum -> sum <= most);
  }

  private void add(double[] leg, Mix mix, int leaves) {
    Region shown = mix.footprint(canvas);
    if (leaves > 0 && !shown.empty()) {
      double weight = (double) leaves * shown.width() / canvas.width();
      int last = (shown.bottom() - 1 - canvas.top()) / ROWS;
      for (int k = (shown.top() - canvas.top()) / ROWS; k <= last; k++) {
        leg[k] += weight;
      }
    }
  }

  /** What a stage is made of, down to its leaves, inputs first. */
  private List<Node> run(Node stage) {
    Set<Node> seen = Collections.newSetFromMap(new IdentityHashMap<>());
    return Plan.topological(List.of(stage), seen, node -> isLeaf(node, stage));
  }

  /**
   * What is made wherever its stage is. The steps of a masked group are not: they run where its
   * mask shows, and would run in all of the mask's rectangle as a stage.
   */
  private static Set<Node> unmasked(Node stage, List<Node> run) {
    Set<Node> unmasked = Collections.newSetFromMap(new IdentityHashMap<>());
    unmasked.add(stage);
    for (int i = run.size() - 1; i >= 0; i--) { // users come before what they use
      Node node = run.get(i);
      if (unmasked.contains(node)) {
        boolean masked = node instanceof Mix mix && mix.mask() != null;
        unmasked.addAll(masked ? node.inputs().subList(0, 1) : node.inputs());
      }
    }
    return unmasked;
  }
}
