package org.duskply.examples.trace;

import org.jspecify.annotations.Nullable;

/**
 * A ray on its way and the nearest shape it has met; one a worker and depth, used again and again.
 */
public final class Ray {
  public double ox;
  public double oy;
  public double oz;
  public double dx;
  public double dy;
  public double dz;

  /** Distance to the nearest shape met so far; before, the farthest distance of interest. */
  public double t;

  /** The nearest shape met so far, or null. */
  public @Nullable Shape shape;

  /** Where on its own surface the shape was met; each kind of shape has its own meaning. */
  double a;

  double b;

  final int[] stack = new int[96];

  /** Starts anew; the direction has length 1. */
  public Ray from(double x, double y, double z, double toX, double toY, double toZ, double limit) {
    ox = x;
    oy = y;
    oz = z;
    dx = toX;
    dy = toY;
    dz = toZ;
    t = limit;
    shape = null;
    return this;
  }

  void meet(double distance, Shape met) {
    t = distance;
    shape = met;
  }
}
