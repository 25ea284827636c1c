package org.duskply.examples.boathouse;

import java.util.List;
import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Ray;
import org.duskply.examples.trace.Sampler;
import org.duskply.examples.trace.Surface;
import org.duskply.examples.trace.Vec;

/**
 * All that is lit by hand: panes, lanterns, fire, flashes. Each has a size, so that shadows are
 * soft. Of several lamps of one kind, one is asked at random, the stronger the likelier.
 */
final class Lamps {
  private final Scene scene;
  private final Sampler sampler;
  private final Lighting lighting;
  private final double[] edges = new double[Lights.FLASHES];
  private final Vec[] axes = new Vec[Lights.FLASHES];
  private final double[] share = new double[16];

  Lamps(Scene scene, Sampler sampler, Lighting lighting) {
    this.scene = scene;
    this.sampler = sampler;
    this.lighting = lighting;
    for (int f = 0; f < Lights.FLASHES; f++) {
      edges[f] = Flashes.ALL.get(f).edge();
      axes[f] = Flashes.ALL.get(f).axis();
    }
  }

  /** The light of every lamp that reaches a place. */
  void shine(Surface at, Ray ray, double weight, int depth) {
    panes(at, ray, weight, depth);
    lanterns(at, ray, weight, depth);
    brazier(at, ray, weight, depth);
    for (int f = 0; f < Lights.FLASHES; f++) {
      flash(f, at, ray, weight, depth);
    }
  }

  /** What the lit rooms spill: each pane is a rectangle of warm light; one of them is asked. */
  private void panes(Surface at, Ray ray, double weight, int depth) {
    List<Pane> panes = scene.panes;
    double u = 2 * sampler.value(12 + 40 * depth) - 1;
    double v = 2 * sampler.value(13 + 40 * depth) - 1;
    double total = 0;
    for (int i = 0; i < panes.size(); i++) {
      Pane pane = panes.get(i);
      Vec c = pane.centre();
      total += share[i] = shed(pane, c.x() - at.x, c.y() - at.y, c.z() - at.z);
    }
    if (total < 0.002) {
      return;
    }
    Pane pane =
        panes.get(Lighting.chosen(share, panes.size(), total * sampler.value(14 + 40 * depth)));
    Vec h = pane.half();
    Vec k = pane.otherHalf();
    Vec c = pane.centre();
    double x = c.x() + u * h.x() + v * k.x() - at.x;
    double y = c.y() + u * h.y() + v * k.y() - at.y;
    double z = c.z() + u * h.z() + v * k.z() - at.z;
    double far = Math.sqrt(x * x + y * y + z * z);
    lighting.direct(
        Lights.ROOMS,
        at,
        ray,
        weight * total,
        x / far,
        y / far,
        z / far,
        far - 0.02,
        1,
        0.60,
        0.27);
  }

  /** Light of a pane on a place that faces it; the last term keeps it finite close to the glass. */
  private static double shed(Pane pane, double x, double y, double z) {
    Vec out = pane.outward();
    double square = x * x + y * y + z * z;
    double facing = -(x * out.x() + y * out.y() + z * out.z()) + 0.1;
    if (facing <= 0) {
      return 0;
    }
    double area = pane.area();
    return 2.6 * area * facing / Math.sqrt(square) / (Math.PI * square + 0.4 * area);
  }

  private void lanterns(Surface at, Ray ray, double weight, int depth) {
    List<Vec> lanterns = scene.lanterns;
    double total = 0;
    for (int i = 0; i < lanterns.size(); i++) {
      total += share[i] = lantern(lanterns.get(i), at);
    }
    if (total < 0.003 || at.circuit == Lights.LANTERNS) {
      return;
    }
    Vec lamp =
        lanterns.get(
            Lighting.chosen(share, lanterns.size(), total * sampler.value(29 + 40 * depth)));
    double x = lamp.x() - at.x;
    double y = lamp.y() + 0.10 * (sampler.value(30 + 40 * depth) - 0.5) - at.y;
    double z = lamp.z() - at.z;
    double far = Math.sqrt(x * x + y * y + z * z);
    lighting.direct(
        Lights.LANTERNS,
        at,
        ray,
        weight * total,
        x / far,
        y / far,
        z / far,
        far - 0.17,
        1,
        0.56,
        0.22);
  }

  /** Light of a lantern at a distance; little goes straight down through its foot. */
  private static double lantern(Vec lamp, Surface at) {
    double x = lamp.x() - at.x;
    double y = lamp.y() - at.y;
    double z = lamp.z() - at.z;
    double square = x * x + y * y + z * z;
    double facing = x * at.nx + y * at.ny + z * at.nz;
    if (square > 121 || (facing <= 0 && at.through == 0)) {
      return 0;
    }
    double far = Math.sqrt(square);
    double lit = 0.85 / (square + 0.02) * (1 - Maths.smooth(7, 11, far));
    return lit * (1 - 0.85 * Maths.smooth(0.55, 0.95, y / far));
  }

  private void brazier(Surface at, Ray ray, double weight, int depth) {
    Vec b = Furniture.BRAZIER;
    double x = b.x() + 0.34 * (sampler.value(31 + 40 * depth) - 0.5) - at.x;
    double y = b.y() + 0.66 + 0.40 * sampler.value(32 + 40 * depth) - at.y;
    double z = b.z() + 0.34 * (sampler.value(33 + 40 * depth) - 0.5) - at.z;
    double square = x * x + y * y + z * z;
    double far = Math.sqrt(square);
    double lit = 2.3 / (square + 0.08) * (1 - Maths.smooth(9, 14, far));
    if (lit > 0.003 && at.circuit != Lights.BRAZIER) {
      lighting.direct(
          Lights.BRAZIER,
          at,
          ray,
          weight * lit,
          x / far,
          y / far,
          z / far,
          far - 0.05,
          1,
          0.42,
          0.10);
    }
  }

  private void flash(int f, Surface at, Ray ray, double weight, int depth) {
    Flash flash = Flashes.ALL.get(f);
    Vec head = flash.at();
    double x = head.x() - at.x;
    double y = head.y() - at.y;
    double z = head.z() - at.z;
    double square = x * x + y * y + z * z;
    double far = Math.sqrt(square);
    Vec axis = axes[f];
    double cos = -(x * axis.x() + y * axis.y() + z * axis.z()) / far;
    double edge = edges[f];
    double reach = flash.reach();
    if (cos <= edge || far >= reach) {
      return;
    }
    double beam = Maths.smooth(edge, 0.35 * edge + 0.65, cos);
    double lit = flash.power() / square * beam * (1 - Maths.smooth(0.6 * reach, reach, far));
    if (lit < 0.002) {
      return;
    }
    double r = flash.radius();
    x += r * (2 * sampler.value(34 + 40 * depth) - 1);
    y += r * (2 * sampler.value(35 + 40 * depth) - 1);
    z += r * (2 * sampler.value(36 + 40 * depth) - 1);
    double d = Math.sqrt(x * x + y * y + z * z);
    lighting.direct(
        Lights.FLASH + f,
        at,
        ray,
        weight * lit,
        x / d,
        y / d,
        z / d,
        d - (f == Flashes.WITH_PERSON ? 0.75 : 0),
        flash.red(),
        flash.green(),
        flash.blue());
  }
}
