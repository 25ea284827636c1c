package org.duskply.examples.trace;

/** A thin flat thing: a pointed leaf or blade, or a whole parallelogram. */
public final class Leaf extends Shape {
  private static final double NEAR = 1e-5;
  private final Vec centre;
  private final Vec facing;
  private final Vec overLength;
  private final Vec overWidth;
  private final boolean pointed;
  private final double length;
  private final double width;

  private Leaf(Vec centre, Vec length, Vec width, boolean pointed, Texture texture, int seed) {
    super(texture, seed, 1e-5, hull(centre, length, width, pointed));
    this.centre = centre;
    this.pointed = pointed;
    facing = length.cross(width).unit();
    this.length = length.length();
    this.width = width.length();
    overLength = length.times(1 / length.dot(length));
    overWidth = width.times(1 / width.dot(width));
  }

  /** Its corners; those of a pointed leaf are its tips and two tangents, which hold it closely. */
  private static Vec[] hull(Vec c, Vec length, Vec width, boolean pointed) {
    Vec l = pointed ? length.times(0.5) : length;
    Vec a = c.plus(l).plus(width);
    Vec b = c.plus(l).minus(width);
    Vec d = c.minus(l).plus(width);
    Vec e = c.minus(l).minus(width);
    return pointed
        ? new Vec[] {a, b, d, e, c.plus(length), c.minus(length)}
        : new Vec[] {a, b, d, e};
  }

  /** A leaf from its centre to its tip and to its side; the two directions at right angles. */
  public static Leaf pointed(Vec centre, Vec toTip, Vec toSide, Texture texture, int seed) {
    return new Leaf(centre, toTip, toSide, true, texture, seed);
  }

  /** A rectangle from its centre and its two half sides. */
  public static Leaf sheet(Vec centre, Vec half, Vec otherHalf, Texture texture, int seed) {
    return new Leaf(centre, half, otherHalf, false, texture, seed);
  }

  @Override
  boolean meets(Ray ray) {
    double slope = facing.x() * ray.dx + facing.y() * ray.dy + facing.z() * ray.dz;
    double x = ray.ox - centre.x();
    double y = ray.oy - centre.y();
    double z = ray.oz - centre.z();
    double t = -(facing.x() * x + facing.y() * y + facing.z() * z) / slope;
    if (!(t > NEAR && t < ray.t)) {
      return false;
    }
    x += t * ray.dx;
    y += t * ray.dy;
    z += t * ray.dz;
    double a = x * overLength.x() + y * overLength.y() + z * overLength.z();
    double b = Math.abs(x * overWidth.x() + y * overWidth.y() + z * overWidth.z());
    if (a < -1 || a > 1 || b > (pointed ? 1 - a * a : 1)) {
      return false;
    }
    ray.meet(t, this);
    return true;
  }

  @Override
  void describe(Ray ray, Surface at) {
    double x = at.x - centre.x();
    double y = at.y - centre.y();
    double z = at.z - centre.z();
    at.u = (x * overLength.x() + y * overLength.y() + z * overLength.z()) * length;
    at.v = (x * overWidth.x() + y * overWidth.y() + z * overWidth.z()) * width;
    at.w = 0;
    at.face(facing.x(), facing.y(), facing.z(), ray);
  }
}
