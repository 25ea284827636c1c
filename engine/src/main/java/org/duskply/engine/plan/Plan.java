package org.duskply.engine.plan;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.duskply.engine.pixel.Region;

/**
 * A frozen graph ready to be rendered: its frames, and its stages so that each comes after those it
 * reads. Immutable and thread-safe.
 */
public final class Plan {
  /** Bands that a neighbourhood may reach up and down so that what it reads is made for each. */
  private static final int NEAR_BANDS = 16;

  private final List<FrameNode> frames;
  private final List<Stage> stages;
  private final Map<Node, Integer> stageIndex;
  private final PlanSettings settings;

  private Plan(
      List<FrameNode> frames,
      List<Stage> stages,
      Map<Node, Integer> stageIndex,
      PlanSettings settings) {
    this.settings = settings;
    this.frames = List.copyOf(frames);
    this.stages = List.copyOf(stages);
    this.stageIndex = stageIndex;
  }

  /**
   * The plan that makes some nodes.
   *
   * @param roots the pictures that are wanted; each becomes a stage
   * @param settings how the work is cut up; never changes a bit
   */
  public static Plan of(List<Node> roots, PlanSettings settings) {
    List<Node> order = topological(roots, Collections.newSetFromMap(new IdentityHashMap<>()));
    Set<Node> staged = staged(roots, order, settings);
    Set<Node> legs = Legs.ends(order, settings.legLeaves(), staged);
    staged.addAll(legs);
    legs.addAll(stagePicturesOfSeveral(order, staged)); // those below a group that was cut
    List<FrameNode> frames = new ArrayList<>();
    List<Stage> stages = new ArrayList<>();
    Map<Node, Integer> frameIndex = new IdentityHashMap<>();
    Map<Node, Integer> stageIndex = new IdentityHashMap<>();
    Index index =
        new Index() {
          @Override
          public int frame(FrameNode frame) {
            return known(frameIndex, frame);
          }

          @Override
          public int stage(Node node) {
            return known(stageIndex, node);
          }
        };
    for (Node node : order) {
      if (node instanceof FrameNode frame) {
        frameIndex.put(frame, frames.size());
        frames.add(frame);
      }
      if (staged.contains(node)) {
        stages.add(stage(node, staged, legs.contains(node), settings, index));
        stageIndex.put(node, stages.size() - 1);
      }
    }
    return new Plan(frames, stages, stageIndex, settings);
  }

  /** How the work is cut up. */
  public PlanSettings settings() {
    return settings;
  }

  /** The frames that are read, each once. */
  public List<FrameNode> frames() {
    return frames;
  }

  /** The stages, each after those it reads. */
  public List<Stage> stages() {
    return stages;
  }

  /**
   * Where the stage of a node stands; the node is a root of this plan, or one that its stages read.
   */
  public int stageOf(Node node) {
    return known(stageIndex, node);
  }

  private static Stage stage(
      Node node, Set<Node> staged, boolean leg, PlanSettings settings, Index index) {
    if (node instanceof FrameNode frame) {
      return new FrameStage(frame, index);
    }
    if (node instanceof AreaNode area) {
      return new AreaStage(area, index, staged::contains, settings.has(Rule.KNOWN));
    }
    Program program = Fusion.compile((PointNode) node, staged::contains, settings.has(Rule.SPANS));
    return new FusedStage(node, program, settings.chunkWidth(), leg, index);
  }

  private static Set<Node> staged(List<Node> roots, List<Node> order, PlanSettings settings) {
    Set<Node> staged = Collections.newSetFromMap(new IdentityHashMap<>());
    staged.addAll(roots);
    Set<Node> inline = settings.has(Rule.INLINE) ? inline(order, settings) : Set.of();
    for (Node node : order) {
      if (node instanceof AreaNode) {
        Stream.concat(Stream.of(node), node.inputs().stream())
            .filter(n -> !inline.contains(n))
            .forEach(staged::add);
      } else if (node instanceof FrameNode frame && frame.reduction() > 1) {
        staged.add(frame);
      } else if (node instanceof Mix mix) {
        Node mask = mix.mask();
        if (mask != null) {
          staged.add(mask);
        }
      }
      if (node.planes() == 1) {
        node.inputs().stream().filter(Plan::worked).forEach(staged::add);
      }
      if (!settings.has(Rule.FUSE) && node instanceof PointNode) {
        staged.add(node);
      }
    }
    stageNarrowMasks(order, staged);
    stagePicturesOfSeveral(order, staged);
    return staged;
  }

  /** What is cheap, and read by one neighbourhood alone that does not reach very far. */
  private static Set<Node> inline(List<Node> order, PlanSettings settings) {
    Set<Node> inline = Collections.newSetFromMap(new IdentityHashMap<>());
    Set<Node> read = Collections.newSetFromMap(new IdentityHashMap<>());
    for (Node user : order) {
      boolean near =
          user instanceof AreaNode area && area.reach() <= NEAR_BANDS * settings.bandRows();
      for (Node input : user.inputs()) {
        if (!read.add(input)) {
          inline.remove(input);
        } else if (near && input instanceof AreaNode area && area.cheap()) {
          inline.add(input);
        }
      }
    }
    return inline;
  }

  /**
   * A mask that is read off pictures and shows less than another that reads it becomes a stage of
   * its own, so that the pictures are looked at only where it shows: the lights inside one outline,
   * or all of another.
   */
  private static void stageNarrowMasks(List<Node> order, Set<Node> staged) {
    Set<Node> offPictures = Collections.newSetFromMap(new IdentityHashMap<>());
    for (Node node : order) {
      if (node.planes() > 1 || node instanceof FrameNode) {
        continue;
      }
      for (Node input : node.inputs()) {
        if (input.planes() > 1 || input instanceof FrameNode) {
          offPictures.add(node);
        } else if (offPictures.contains(input)) {
          offPictures.add(node);
          if (showsBeyond(node, input)) {
            staged.add(input);
          }
        }
      }
    }
  }

  private static boolean showsBeyond(Node mask, Node member) {
    return !member.footprint(Region.EVERYWHERE).contains(mask.footprint(Region.EVERYWHERE));
  }

  /** Whether a node is a picture that steps have made: work that is not to be done twice. */
  private static boolean worked(Node node) {
    return node.planes() > 1 && !(node instanceof FrameNode);
  }

  /**
   * A picture that two stages would each compute on their way becomes a stage of its own, so that
   * no step runs twice: a mask inside a group reads a picture that stands on the one below the
   * group.
   *
   * @return those that were no stages before
   */
  private static List<Node> stagePicturesOfSeveral(List<Node> order, Set<Node> staged) {
    List<Node> added = new ArrayList<>();
    Map<Node, Node> stageOf = new IdentityHashMap<>();
    for (int i = order.size() - 1; i >= 0; i--) { // users come before what they use
      Node node = order.get(i);
      Node stage = staged.contains(node) ? node : stageOf.get(node);
      for (Node input : stage == null ? List.<Node>of() : node.inputs()) {
        Node other = stageOf.putIfAbsent(input, stage);
        if (other != null && other != stage && input instanceof Mix && staged.add(input)) {
          added.add(input);
        }
      }
    }
    return added;
  }

  /**
   * All nodes that the roots are made of, inputs first; the graph may be deep, so nothing recurses.
   *
   * @param seen nodes to be left out, to which those that are returned are added
   */
  static List<Node> topological(List<Node> roots, Set<Node> seen) {
    return topological(roots, seen, node -> false);
  }

  /** The same down to leaves, whose own inputs are left out. */
  static List<Node> topological(List<Node> roots, Set<Node> seen, Predicate<Node> leaf) {
    List<Node> order = new ArrayList<>();
    Deque<Visit> stack = new ArrayDeque<>();
    for (Node root : roots) {
      if (seen.add(root)) {
        stack.push(new Visit(root));
      }
      while (!stack.isEmpty()) {
        Visit visit = stack.peek();
        if (visit.next < visit.node.inputs().size() && !leaf.test(visit.node)) {
          Node input = visit.node.inputs().get(visit.next++);
          if (seen.add(input)) {
            stack.push(new Visit(input));
          }
        } else {
          order.add(stack.pop().node);
        }
      }
    }
    return order;
  }

  private static int known(Map<Node, Integer> index, Node node) {
    Integer i = index.get(node);
    if (i == null) {
      throw new IllegalArgumentException("Not a node of this plan: " + node);
    }
    return i;
  }

  /** A node on the way down, and its next input to look at. */
  private static final class Visit {
    final Node node;
    int next;

    Visit(Node node) {
      this.node = node;
    }
  }
}
