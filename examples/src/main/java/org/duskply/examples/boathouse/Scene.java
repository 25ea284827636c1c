package org.duskply.examples.boathouse;

import java.util.List;
import org.duskply.examples.trace.Axes;
import org.duskply.examples.trace.Ray;
import org.duskply.examples.trace.Tree;
import org.duskply.examples.trace.Vec;

/**
 * The frozen scene: solid things, glass, and where the lamps are. Any number of threads may look.
 */
final class Scene {
  private final Tree built;
  private final Tree grown;
  final Tree glass;
  final List<Pane> panes;
  final List<Vec> lanterns;
  final List<Vec> roomLamps;

  private Scene(Scenery made) {
    built = new Tree(made.built, House.AXES);
    grown = new Tree(made.grown, Axes.turned(new Vec(0, 0, 0), 0));
    glass = new Tree(made.glass, House.AXES);
    panes = List.copyOf(made.panes);
    lanterns = List.copyOf(made.lanterns);
    roomLamps = List.copyOf(made.roomLamps);
  }

  /** Moves a ray on to the nearest solid thing. */
  void nearest(Ray ray) {
    built.nearest(ray);
    grown.nearest(ray);
  }

  /** True if anything solid lies within the ray's reach. */
  boolean blocks(Ray ray) {
    return built.blocks(ray) || grown.blocks(ray);
  }

  /** Builds everything; with the assistant in the picture, if asked. */
  static Scene build(boolean withPerson) {
    Scenery scenery = new Scenery();
    House.build(scenery);
    Waterside.build(scenery);
    Boat.build(scenery);
    Furniture.build(scenery);
    Nature.build(scenery);
    if (withPerson) {
      Person.build(scenery);
    }
    return new Scene(scenery);
  }
}
