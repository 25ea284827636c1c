package org.duskply.engine.testing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.duskply.engine.frame.FrameSource.Access;
import org.duskply.engine.mask.Ground;
import org.duskply.engine.mask.MaskGraph;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.AreaNode;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Mix;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;
import org.duskply.recipe.mask.AllOf;
import org.duskply.recipe.mask.AnyOf;
import org.duskply.recipe.mask.Ease;
import org.duskply.recipe.mask.Ellipse;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.Flash;
import org.duskply.recipe.mask.FlashReach;
import org.duskply.recipe.mask.Gradient;
import org.duskply.recipe.mask.HueRange;
import org.duskply.recipe.mask.Hues;
import org.duskply.recipe.mask.Luminance;
import org.duskply.recipe.mask.LuminanceRange;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.Oval;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.mask.Polygon;
import org.duskply.recipe.mask.Radii;
import org.duskply.recipe.mask.Ramp;
import org.jspecify.annotations.Nullable;

/**
 * A graph by structure, not by recipe: steps of every shape that the planner may meet (masked or
 * not, with coverage, opacities of 0 and 1, groups in groups, the picture below read twice, masks
 * read off the picture below or off frames, area operations on masks and on pictures) drawn by a
 * seed.
 */
public final class RandomGraph {
  private final Random random;
  private final int width;
  private final int height;
  private final List<FrameNode> frames = new ArrayList<>();
  private int serial;

  /** A graph on a canvas of {@code width × height}. */
  public RandomGraph(long seed, int width, int height) {
    this.random = new Random(seed);
    this.width = width;
    this.height = height;
    for (int i = 0; i < 5; i++) {
      frames.add(
          frame(seed * 100 + i, i == 3 ? 4 : 3, i % 2 == 0 ? Access.RANDOM : Access.FORWARD));
    }
  }

  /** The canvas. */
  public Region canvas() {
    return Region.ofSize(width, height);
  }

  /** A picture of {@code steps} steps. */
  public Node picture(int steps) {
    Node below = frames.get(0);
    for (int i = 0; i < steps; i++) {
      below = step(below, 2);
    }
    return below;
  }

  private FrameNode frame(long seed, int channels, Access access) {
    NoiseFrame source =
        new NoiseFrame(seed, width, height, channels, 1 + random.nextInt(20), access);
    return source.node(random.nextInt(3) - 1);
  }

  private Node step(Node below, int depth) {
    FrameNode frame = frames.get(1 + random.nextInt(4));
    float opacity = new float[] {1f, 1f, 0.5f, 0.3f, 0f}[random.nextInt(5)];
    Node mask = random.nextInt(4) == 0 ? null : mask(below, 2);
    switch (random.nextInt(depth > 0 ? 6 : 5)) {
      case 0:
        return new Mix(below, frame, mask, covering(frame), opacity);
      case 1:
        return new Mix(below, new Blend(below, frame), mask, covering(frame), opacity);
      case 2:
        return new Mix(below, new Scale(below, 0.75f), mask, null, opacity);
      case 3:
        return new Mix(
            below, new Blend(below, new Scale(frame, 1.5f)), mask, covering(frame), opacity);
      case 4:
        return new Mix(
            below,
            new Spread(below, 1 + random.nextInt(4), serial++, canvas()),
            mask,
            null,
            opacity);
      default:
        Node inner = below;
        for (int i = 0; i < 1 + random.nextInt(3); i++) {
          inner = step(inner, depth - 1);
        }
        return new Mix(below, inner, mask, null, opacity);
    }
  }

  private static @Nullable FrameNode covering(FrameNode frame) {
    return frame.planes() == 4 ? frame : null;
  }

  /** A mask, now and then one that is read off the picture below or off a frame. */
  private Node mask(Node below, int depth) {
    Node drawn = mask(depth);
    if (random.nextInt(3) != 0) {
      return drawn;
    }
    Node read = masks().of(ofPicture(), below);
    return switch (random.nextInt(4)) {
      case 0 -> read;
      case 1 -> new Blend(read, drawn);
      case 2 -> new Rest(read);
      default -> new Spread(read, 1 + random.nextInt(6), serial++, canvas());
    };
  }

  /** A mask that is read off a picture as a recipe has it. */
  private MaskUse ofPicture() {
    String frame = random.nextInt(4) == 0 ? "" + random.nextInt(5) : null;
    MaskKind kind =
        switch (random.nextInt(4)) {
          case 0 -> new Luminance(new LuminanceRange(0.4, null, 0.3, frame));
          case 1 -> new Luminance(new LuminanceRange(0.1, 0.6, 0, frame));
          case 2 -> new Hues(new HueRange(random.nextInt(360), 120, 30, frame));
          default -> new Flash(new FlashReach("1", frame, 0.5));
        };
    List<MaskUse> none = List.of();
    double feather = random.nextInt(3) == 0 ? 3 : 0;
    List<MaskUse> within = random.nextBoolean() ? none : List.of(shapes(0));
    return new MaskUse.Inline(
        new Mask(kind, within, none, 0, feather, false, random.nextBoolean() ? 1 : 0.7, Map.of()));
  }

  private MaskGraph masks() {
    Ground ground = new Ground(width, height, 1, canvas());
    return new MaskGraph(Map.of(), ground, Map.of(), new FramesOnly(frames));
  }

  private Node mask(int depth) {
    int kind = random.nextInt(depth > 0 ? 7 : 2);
    if (kind > 4) {
      return masks().of(shapes(1 + random.nextInt(2)), frames.get(0));
    }
    if (kind < 2) {
      int left = random.nextInt(width + 20) - 20;
      int top = random.nextInt(height + 20) - 20;
      return new Box(
          new Region(left, top, left + 1 + random.nextInt(width), top + 1 + random.nextInt(height)),
          random.nextInt(5));
    }
    if (kind == 2) {
      return new Rest(mask(depth - 1));
    }
    if (kind == 3) {
      return new Spread(mask(depth - 1), 1 + random.nextInt(6), serial++, Region.EVERYWHERE);
    }
    return new Blend(mask(depth - 1), mask(depth - 1));
  }

  /** A mask of outlines and gradients as a recipe has it, each key by chance. */
  private MaskUse shapes(int depth) {
    boolean gradient = random.nextInt(3) == 0;
    MaskKind kind =
        switch (random.nextInt(depth > 0 ? 5 : 3)) {
          case 0 -> new Ellipse(new Oval(point(), new Radii(3 + random.nextInt(30), 9), 25));
          case 1 -> new Polygon(List.of(point(), point(), point(), point()), FillRule.EVENODD);
          case 2 ->
              gradient
                  ? new Gradient(new Ramp(point(), new Point(70.5, 9), Ease.SMOOTH))
                  : new Polygon(List.of(point(), point(), point()), FillRule.NONZERO);
          case 3 -> new AnyOf(List.of(shapes(depth - 1), shapes(depth - 1)));
          default -> new AllOf(List.of(shapes(depth - 1), shapes(depth - 1)));
        };
    double widen = new double[] {0, 0, 4.5, -1.25, 11}[random.nextInt(5)];
    List<MaskUse> none = List.of();
    return new MaskUse.Inline(
        new Mask(
            kind,
            depth > 0 && random.nextBoolean() ? List.of(shapes(0)) : none,
            depth > 0 && random.nextBoolean() ? List.of(shapes(0)) : none,
            widen,
            random.nextBoolean() ? 0 : 3,
            random.nextInt(4) == 0,
            random.nextBoolean() ? 1 : 0.7,
            Map.of()));
  }

  private Point point() {
    return new Point(random.nextInt(width + 40) - 20.25, random.nextInt(height + 40) - 19.5);
  }

  /** The greater of two pictures or masks. */
  private record Blend(Node a, Node b) implements PointNode {
    @Override
    public List<Node> inputs() {
      return List.of(a, b);
    }

    @Override
    public int planes() {
      return a.planes() == 1 ? 1 : 3;
    }

    @Override
    public Region footprint(Region within) {
      return planes() == 1 ? a.footprint(within).hull(b.footprint(within)) : within;
    }

    @Override
    public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
      for (int p = 0; p < planes(); p++) {
        for (int i = from; i < to; i++) {
          out[p][i] = Math.max(in[0][p][i], in[1][p][i]);
        }
      }
    }

    @Override
    public void describe(KeyWriter key) {
      key.word("greater");
    }
  }

  /** A picture times a number. */
  private record Scale(Node a, float factor) implements PointNode {
    @Override
    public List<Node> inputs() {
      return List.of(a);
    }

    @Override
    public int planes() {
      return 3;
    }

    @Override
    public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
      for (int p = 0; p < 3; p++) {
        for (int i = from; i < to; i++) {
          out[p][i] = in[0][p][i] * factor;
        }
      }
    }

    @Override
    public void describe(KeyWriter key) {
      key.word("scale").number(factor);
    }
  }

  /** One minus a mask. */
  private record Rest(Node a) implements PointNode {
    @Override
    public List<Node> inputs() {
      return List.of(a);
    }

    @Override
    public int planes() {
      return 1;
    }

    @Override
    public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
      for (int i = from; i < to; i++) {
        out[0][i] = 1f - in[0][0][i];
      }
    }

    @Override
    public void describe(KeyWriter key) {
      key.word("rest");
    }
  }

  /**
   * A box whose values depend on the place: full, half, striped, or noise that alternates too often
   * for runs.
   */
  private record Box(Region box, int look) implements AreaNode {
    @Override
    public List<Node> inputs() {
      return List.of();
    }

    @Override
    public int planes() {
      return 1;
    }

    @Override
    public Region footprint(Region within) {
      return box.meet(within);
    }

    @Override
    public Region needs(int input, Region out) {
      throw new IndexOutOfBoundsException();
    }

    @Override
    public void fill(List<Planes> in, Planes out) {
      Region part = out.area().meet(box);
      for (int y = part.top(); y < part.bottom(); y++) {
        for (int x = part.left(); x < part.right(); x++) {
          out.plane(0)[out.at(x, y)] = value(x, y);
        }
      }
    }

    private float value(int x, int y) {
      return switch (look) {
        case 0 -> 1f;
        case 1 -> 0.5f;
        case 2 -> Math.floorMod(x, 8) / 7f;
        case 3 -> Math.floorMod(x + y, 2);
        default -> Math.floorMod(x * 31 + y * 17, 5) / 4f;
      };
    }

    @Override
    public long scratchBytes(Region out) {
      return 0;
    }

    @Override
    public void describe(KeyWriter key) {
      key.word("box").region(box).number(look);
    }
  }

  /**
   * The greatest in a square about each pixel, of what lies in some bounds; pixels outside a mask's
   * footprint are 0, a picture goes on by its edge.
   */
  private record Spread(Node a, int reach, int serial, Region bounds) implements AreaNode {
    @Override
    public List<Node> inputs() {
      return List.of(a);
    }

    @Override
    public int planes() {
      return a.planes() == 1 ? 1 : 3;
    }

    @Override
    public Region footprint(Region within) {
      return planes() == 1
          ? a.footprint(within.grow(reach).meet(bounds)).grow(reach).meet(within)
          : within;
    }

    @Override
    public Region needs(int input, Region out) {
      return out.grow(reach).meet(bounds);
    }

    @Override
    public void fill(List<Planes> in, Planes out) {
      Planes from = in.get(0);
      for (int p = 0; p < planes(); p++) {
        Region area = out.area();
        Arrays.fill(out.plane(p), Float.NEGATIVE_INFINITY);
        for (int y = area.top(); y < area.bottom(); y++) {
          for (int x = area.left(); x < area.right(); x++) {
            Region near = new Region(x, y, x + 1, y + 1).grow(reach).meet(from.area());
            float most = 0;
            for (int v = near.top(); v < near.bottom(); v++) {
              for (int u = near.left(); u < near.right(); u++) {
                most = Math.max(most, from.plane(p)[from.at(u, v)]);
              }
            }
            out.plane(p)[out.at(x, y)] = most;
          }
        }
      }
    }

    @Override
    public long scratchBytes(Region out) {
      return 4096;
    }

    @Override
    public void describe(KeyWriter key) {
      key.word("spread").number(reach);
    }
  }
}
