package org.duskply.examples.boathouse;

import java.util.ArrayList;
import java.util.List;
import org.duskply.examples.trace.Axes;
import org.duskply.examples.trace.Block;
import org.duskply.examples.trace.Rod;
import org.duskply.examples.trace.Shape;
import org.duskply.examples.trace.Texture;
import org.duskply.examples.trace.Vec;

/** The workshop in which the scene is put together, thing by thing, before it is frozen. */
final class Scenery {
  final List<Shape> built = new ArrayList<>();
  final List<Shape> grown = new ArrayList<>();
  final List<Shape> glass = new ArrayList<>();
  final List<Pane> panes = new ArrayList<>();
  final List<Vec> lanterns = new ArrayList<>();
  final List<Vec> roomLamps = new ArrayList<>();
  private int seeds;

  int seed() {
    return ++seeds;
  }

  /** Adds a thing that stands anywhere. */
  void add(Shape shape) {
    grown.add(shape);
  }

  /**
   * A box with its lower corner nearest the axes' origin at (x, y, z), in the axes' own directions.
   */
  void box(Axes on, double[] from, double[] to, Texture texture) {
    Axes at = on.at((from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (from[2] + to[2]) / 2);
    Shape box = new Block(at, to[0] - from[0], to[1] - from[1], to[2] - from[2], texture, seed());
    (House.isAligned(on) ? built : grown).add(box);
  }

  /** A squared timber between two points. */
  void beam(Vec from, Vec to, double height, double depth, Texture texture) {
    double length = to.minus(from).length();
    add(new Block(Axes.along(from, to), length, height, depth, texture, seed()));
  }

  void rod(Vec from, Vec to, double radius, Texture texture) {
    add(new Rod(from, to, radius, radius, texture, seed()));
  }

  static double[] p(double x, double y, double z) {
    return new double[] {x, y, z};
  }
}
