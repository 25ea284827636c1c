package org.duskply.examples.trace;

/** A place and three directions at right angles: the drawing board on which a thing is built. */
public record Axes(Vec origin, Vec right, Vec up, Vec ahead) {

  /** Upright axes turned about the vertical: {@code ahead} points {@code degrees} right of +z. */
  public static Axes turned(Vec origin, double degrees) {
    double a = Math.toRadians(degrees);
    double s = Maths.sin(a);
    double c = Maths.cos(a);
    return new Axes(origin, new Vec(c, 0, -s), new Vec(0, 1, 0), new Vec(s, 0, c));
  }

  /** Axes whose {@code right} runs from one point to another, {@code up} as near to y as can be. */
  public static Axes along(Vec from, Vec to) {
    Vec right = to.minus(from).unit();
    Vec helper = Math.abs(right.y()) > 0.95 ? new Vec(1, 0, 0) : new Vec(0, 1, 0);
    Vec ahead = right.cross(helper).unit();
    return new Axes(from.towards(to, 0.5), right, ahead.cross(right), ahead);
  }

  /** The world's point of a local one. */
  public Vec point(double x, double y, double z) {
    return origin.plus(direction(x, y, z));
  }

  public Vec direction(double x, double y, double z) {
    return right.times(x).plus(up.times(y)).plus(ahead.times(z));
  }

  /** These axes moved to a local point. */
  public Axes at(double x, double y, double z) {
    return new Axes(point(x, y, z), right, up, ahead);
  }

  /** These axes tilted about {@code right}: {@code ahead} rises by so many degrees. */
  public Axes pitched(double degrees) {
    double a = Math.toRadians(degrees);
    double s = Maths.sin(a);
    double c = Maths.cos(a);
    return new Axes(
        origin, right, up.times(c).minus(ahead.times(s)), ahead.times(c).plus(up.times(s)));
  }

  /** These axes tilted about {@code ahead}: {@code right} rises by so many degrees. */
  public Axes rolled(double degrees) {
    double a = Math.toRadians(degrees);
    double s = Maths.sin(a);
    double c = Maths.cos(a);
    return new Axes(
        origin, right.times(c).plus(up.times(s)), up.times(c).minus(right.times(s)), ahead);
  }

  public double x(Vec p) {
    return p.minus(origin).dot(right);
  }

  public double y(Vec p) {
    return p.minus(origin).dot(up);
  }

  public double z(Vec p) {
    return p.minus(origin).dot(ahead);
  }
}
