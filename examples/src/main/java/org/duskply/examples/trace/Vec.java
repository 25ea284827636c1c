package org.duskply.examples.trace;

/** A point or a direction in metres: x to the right, y up, z away from the camera. */
public record Vec(double x, double y, double z) {
  public Vec plus(Vec o) {
    return new Vec(x + o.x, y + o.y, z + o.z);
  }

  public Vec minus(Vec o) {
    return new Vec(x - o.x, y - o.y, z - o.z);
  }

  public Vec times(double s) {
    return new Vec(x * s, y * s, z * s);
  }

  public double dot(Vec o) {
    return x * o.x + y * o.y + z * o.z;
  }

  public Vec cross(Vec o) {
    return new Vec(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
  }

  public double length() {
    return Math.sqrt(dot(this));
  }

  public Vec unit() {
    return times(1 / length());
  }

  public Vec towards(Vec o, double share) {
    return plus(o.minus(this).times(share));
  }
}
