package org.duskply.examples.boathouse;

import java.util.ArrayList;
import java.util.List;
import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Ray;
import org.duskply.examples.trace.Vec;

/**
 * The soft halo that a lens draws round each bare lamp: light ∝ 1 / (θ² + θ₀²) at the angle θ from
 * the lamp, faded out at {@link #REACH}. It belongs to the lamp's own picture, so light still adds.
 */
final class Glare {
  private static final double CORE = 0.0005;
  private static final double REACH = 0.22;

  /** A lamp that the camera sees: direction, strength, circuit, colour. */
  private record Lamp(Vec way, double strength, int circuit, double green, double blue) {}

  private final List<Lamp> lamps = new ArrayList<>();

  Glare(Scene scene) {
    for (Vec lantern : scene.lanterns) {
      place(scene, lantern, 0.0011, Lights.LANTERNS, 0.56, 0.22);
    }
    place(scene, Furniture.BRAZIER.plus(new Vec(0, 0.85, 0)), 0.0075, Lights.BRAZIER, 0.42, 0.10);
  }

  private void place(Scene scene, Vec at, double power, int circuit, double green, double blue) {
    Vec way = at.minus(View.EYE);
    double far = way.length();
    Vec unit = way.unit();
    Ray ray = new Ray();
    Vec eye = View.EYE;
    ray.from(eye.x(), eye.y(), eye.z(), unit.x(), unit.y(), unit.z(), far - 0.4);
    if (!scene.blocks(ray)) {
      lamps.add(new Lamp(unit, power / (far * far), circuit, green, blue));
    }
  }

  void add(double dx, double dy, double dz, double[] sum) {
    for (int i = 0; i < lamps.size(); i++) {
      Lamp lamp = lamps.get(i);
      double cos = dx * lamp.way.x() + dy * lamp.way.y() + dz * lamp.way.z();
      double square = 2 * (1 - cos);
      if (square < REACH * REACH) {
        double fade = 1 - Maths.smooth(0, REACH * REACH, square);
        double light = lamp.strength * fade * fade / (square + CORE);
        sum[3 * lamp.circuit] += light;
        sum[3 * lamp.circuit + 1] += light * lamp.green;
        sum[3 * lamp.circuit + 2] += light * lamp.blue;
      }
    }
  }
}
