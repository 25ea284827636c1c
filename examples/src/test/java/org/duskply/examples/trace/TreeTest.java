package org.duskply.examples.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The tree must find the very shape and distance that asking every shape in turn finds. */
class TreeTest {
  private static final Texture PLAIN = at -> at.colour(1, 1, 1);
  private static final long SEED = 20_250_912;

  @Test
  void agreesWithAskingEveryShape() {
    SplittableRandom random = new SplittableRandom(SEED);
    List<Shape> shapes = crowd(random);
    Tree turned = new Tree(shapes, Axes.turned(new Vec(1, 2, 3), 37));
    Ray fast = new Ray();
    Ray slow = new Ray();
    int met = 0;
    for (int i = 0; i < 4000; i++) {
      Vec from = point(random);
      Vec way = point(random).unit();
      start(slow, from, way, 1e9);
      for (Shape shape : shapes) {
        shape.meets(slow);
      }
      start(fast, from, way, 1e9);
      turned.nearest(fast);
      assertThat(fast.shape).as("ray %d", i).isSameAs(slow.shape);
      assertThat(fast.t).isEqualTo(slow.t);
      if (slow.shape != null) {
        met++;
        start(fast, from, way, slow.t * 1.0001);
        assertThat(turned.blocks(fast)).as("ray %d reaches", i).isTrue();
        start(fast, from, way, slow.t * 0.9999);
        assertThat(turned.blocks(fast)).as("ray %d falls short", i).isFalse();
      }
    }
    assertThat(met).as("rays that meet anything").isBetween(400, 3900);
  }

  @Test
  void anEmptyTreeBlocksNothing() {
    Ray ray = new Ray();
    start(ray, new Vec(0, 0, 0), new Vec(0, 0, 1), 1e9);
    assertThat(new Tree(List.of(), Axes.turned(new Vec(0, 0, 0), 0)).blocks(ray)).isFalse();
  }

  private static void start(Ray ray, Vec from, Vec way, double limit) {
    ray.from(from.x(), from.y(), from.z(), way.x(), way.y(), way.z(), limit);
  }

  private static List<Shape> crowd(SplittableRandom random) {
    List<Shape> shapes = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      Vec a = point(random);
      Vec b = a.plus(point(random).times(0.15));
      Vec c = a.plus(point(random).times(0.15));
      Axes axes = Axes.along(a, b);
      shapes.add(new Block(axes, 0.8, 0.3, 0.1, PLAIN, i));
      shapes.add(new Ball(b, new Vec(0.3, 0.1, 0.2), PLAIN, i));
      shapes.add(new Rod(a, c, 0.1, 0.03, PLAIN, i));
      shapes.add(Leaf.pointed(c, axes.right(), axes.up().times(0.2), PLAIN, i));
      shapes.add(Leaf.sheet(b, axes.ahead().times(0.4), axes.up().times(0.3), PLAIN, i));
      shapes.add(new Facet(corner(a), corner(b), corner(c), PLAIN, i));
    }
    return shapes;
  }

  private static Facet.Corner corner(Vec p) {
    return new Facet.Corner(p, new Vec(0, 1, 0), 0, 0);
  }

  private static Vec point(SplittableRandom random) {
    return new Vec(
        10 * random.nextDouble() - 5, 10 * random.nextDouble() - 5, 10 * random.nextDouble() - 5);
  }
}
