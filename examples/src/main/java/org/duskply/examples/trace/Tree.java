package org.duskply.examples.trace;

import java.util.List;

/**
 * A tree of enclosing boxes over shapes, split where the summed area of the halves is least (16
 * slices along the longest side). The boxes lie along axes of the tree's own: those along which
 * most of its shapes are built, so that the boxes are tight. Frozen once made.
 */
public final class Tree {
  private static final int SLICES = 16;
  private static final int LEAF = 3;

  private final Axes axes;
  private final Shape[] shapes;

  /**
   * Eight numbers a node, so that a node fills half a cache line: the corners of its box, as bits
   * of floats rounded outward; then for an inner node its second child (the first follows it) and
   * −1 − the axis of its split, for a leaf its first shape and how many.
   */
  private final int[] nodes;

  private int count;

  public Tree(List<Shape> all, Axes axes) {
    this.axes = axes;
    shapes = all.toArray(new Shape[0]);
    int most = Math.max(1, 2 * shapes.length);
    nodes = new int[8 * most];
    double[][] own = new double[shapes.length][];
    for (int i = 0; i < shapes.length; i++) {
      own[i] = shapes[i].box(axes);
    }
    build(own, 0, shapes.length);
  }

  /** Moves the ray on to the nearest shape; what it has met before stays if that is nearer. */
  public void nearest(Ray ray) {
    walk(ray, false);
  }

  /** True if anything lies within the ray's reach. */
  public boolean blocks(Ray ray) {
    return walk(ray, true);
  }

  private boolean walk(Ray ray, boolean any) {
    Vec o = axes.origin();
    Vec right = axes.right();
    Vec ahead = axes.ahead();
    double fromX = ray.ox - o.x();
    double fromZ = ray.oz - o.z();
    double ox = fromX * right.x() + fromZ * right.z();
    double oy = ray.oy - o.y();
    double oz = fromX * ahead.x() + fromZ * ahead.z();
    double dx = ray.dx * right.x() + ray.dz * right.z();
    double dz = ray.dx * ahead.x() + ray.dz * ahead.z();
    double ix = 1 / dx;
    double iy = 1 / ray.dy;
    double iz = 1 / dz;
    int sideX = dx < 0 ? 3 : 0;
    int sideY = ray.dy < 0 ? 4 : 1;
    int sideZ = dz < 0 ? 5 : 2;
    int[] stack = ray.stack;
    int[] nodes = this.nodes;
    int depth = 0;
    int node = 0;
    boolean met = false;
    while (true) {
      int b = 8 * node;
      double in = (Float.intBitsToFloat(nodes[b + sideX]) - ox) * ix;
      double out = (Float.intBitsToFloat(nodes[b + 3 - sideX]) - ox) * ix;
      double inY = (Float.intBitsToFloat(nodes[b + sideY]) - oy) * iy;
      double outY = (Float.intBitsToFloat(nodes[b + 5 - sideY]) - oy) * iy;
      double inZ = (Float.intBitsToFloat(nodes[b + sideZ]) - oz) * iz;
      double outZ = (Float.intBitsToFloat(nodes[b + 7 - sideZ]) - oz) * iz;
      in = inY > in ? inY : in;
      in = inZ > in ? inZ : in;
      out = outY < out ? outY : out;
      out = outZ < out ? outZ : out;
      if (in <= out && out > 0 && in < ray.t) {
        int n = nodes[b + 7];
        if (n < 0) {
          boolean backwards = n == -1 ? sideX != 0 : n == -2 ? sideY != 1 : sideZ != 2;
          stack[depth++] = backwards ? node + 1 : nodes[b + 6];
          node = backwards ? nodes[b + 6] : node + 1;
          continue;
        }
        int first = nodes[b + 6];
        for (int i = first; i < first + n; i++) {
          if (shapes[i].meets(ray)) {
            if (any) {
              return true;
            }
            met = true;
          }
        }
      }
      if (depth == 0) {
        return met;
      }
      node = stack[--depth];
    }
  }

  private int build(double[][] own, int from, int to) {
    int node = 8 * count++;
    double[] box = enclose(own, from, to);
    for (int k = 0; k < 3; k++) {
      nodes[node + k] = Float.floatToIntBits(Math.nextDown((float) box[k]));
      nodes[node + k + 3] = Float.floatToIntBits(Math.nextUp((float) box[k + 3]));
    }
    if (to - from <= LEAF) {
      nodes[node + 6] = from;
      nodes[node + 7] = to - from;
      return node / 8;
    }
    double[] centres = centreBox(own, from, to);
    int axis = longest(centres);
    int middle = split(own, from, to, axis, centres[axis], centres[axis + 3]);
    nodes[node + 7] = -1 - axis;
    build(own, from, middle);
    nodes[node + 6] = build(own, middle, to);
    return node / 8;
  }

  private static double[] nothing() {
    return new double[] {1e30, 1e30, 1e30, -1e30, -1e30, -1e30};
  }

  private static void widen(double[] box, double[] by) {
    for (int k = 0; k < 3; k++) {
      box[k] = Math.min(box[k], by[k]);
      box[k + 3] = Math.max(box[k + 3], by[k + 3]);
    }
  }

  private static double[] enclose(double[][] own, int from, int to) {
    double[] box = nothing();
    for (int i = from; i < to; i++) {
      widen(box, own[i]);
    }
    return box;
  }

  private static double[] centreBox(double[][] own, int from, int to) {
    double[] box = nothing();
    for (int i = from; i < to; i++) {
      for (int k = 0; k < 3; k++) {
        double c = (own[i][k] + own[i][k + 3]) / 2;
        box[k] = Math.min(box[k], c);
        box[k + 3] = Math.max(box[k + 3], c);
      }
    }
    return box;
  }

  private static int longest(double[] box) {
    double x = box[3] - box[0];
    double y = box[4] - box[1];
    double z = box[5] - box[2];
    return x >= y && x >= z ? 0 : y >= z ? 1 : 2;
  }

  private static int slice(double[] own, int axis, double least, double most) {
    double c = (own[axis] + own[axis + 3]) / 2;
    return (int) Math.min(SLICES - 1, SLICES * (c - least) / (most - least));
  }

  private int split(double[][] own, int from, int to, int axis, double least, double most) {
    int best = most > least ? cheapest(own, from, to, axis, least, most) : 0;
    int middle = from;
    for (int i = from; i < to && best > 0; i++) {
      if (slice(own[i], axis, least, most) < best) {
        Shape s = shapes[i];
        shapes[i] = shapes[middle];
        shapes[middle] = s;
        double[] box = own[i];
        own[i] = own[middle];
        own[middle++] = box;
      }
    }
    return middle == from || middle == to ? (from + to) / 2 : middle;
  }

  /** The slice before which to cut so that count times area, summed over both parts, is least. */
  private static int cheapest(
      double[][] own, int from, int to, int axis, double least, double most) {
    double[][] slices = new double[SLICES][];
    int[] counts = new int[SLICES];
    for (int i = from; i < to; i++) {
      int s = slice(own[i], axis, least, most);
      counts[s]++;
      if (slices[s] == null) {
        slices[s] = nothing();
      }
      widen(slices[s], own[i]);
    }
    double[] after = new double[SLICES];
    sweep(slices, counts, after, true);
    double[] before = new double[SLICES];
    sweep(slices, counts, before, false);
    int best = 0;
    double cost = Double.MAX_VALUE;
    for (int s = 1; s < SLICES; s++) {
      double c = before[s - 1] + after[s];
      if (before[s - 1] > 0 && after[s] > 0 && c < cost) {
        cost = c;
        best = s;
      }
    }
    return best;
  }

  /** Count times area of all slices up to each one, from the front or from the back. */
  private static void sweep(double[][] slices, int[] counts, double[] costs, boolean back) {
    double[] box = nothing();
    int count = 0;
    for (int i = 0; i < SLICES; i++) {
      int s = back ? SLICES - 1 - i : i;
      if (counts[s] > 0) {
        widen(box, slices[s]);
        count += counts[s];
      }
      costs[s] = count == 0 ? 0 : count * area(box);
    }
  }

  private static double area(double[] box) {
    double x = box[3] - box[0];
    double y = box[4] - box[1];
    double z = box[5] - box[2];
    return x * y + y * z + z * x;
  }
}
