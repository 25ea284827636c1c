package org.duskply.examples.trace;

/** A round bar between two points, tapering if its two radii differ, open at its ends. */
public final class Rod extends Shape {
  private static final double NEAR = 1e-5;
  private final Vec foot;
  private final Vec axis;
  private final double length;
  private final double radius;
  private final double taper;

  public Rod(Vec from, Vec to, double radiusFrom, double radiusTo, Texture texture, int seed) {
    super(texture, seed, Math.max(radiusFrom, radiusTo), from, to);
    foot = from;
    length = to.minus(from).length();
    axis = to.minus(from).unit();
    radius = radiusFrom;
    taper = (radiusTo - radiusFrom) / length;
  }

  @Override
  boolean meets(Ray ray) {
    double x = ray.ox - foot.x();
    double y = ray.oy - foot.y();
    double z = ray.oz - foot.z();
    double oa = x * axis.x() + y * axis.y() + z * axis.z();
    double da = ray.dx * axis.x() + ray.dy * axis.y() + ray.dz * axis.z();
    double od = x * ray.dx + y * ray.dy + z * ray.dz;
    double r = radius + taper * oa;
    double rd = taper * da;
    double a = 1 - da * da - rd * rd;
    double b = od - oa * da - r * rd;
    double c = x * x + y * y + z * z - oa * oa - r * r;
    double root = b * b - a * c;
    if (root < 0 || Math.abs(a) < 1e-12) {
      return false;
    }
    double s = Math.sqrt(root);
    return inside(ray, (-b - s) / a, oa, da) || inside(ray, (-b + s) / a, oa, da);
  }

  private boolean inside(Ray ray, double t, double oa, double da) {
    double h = oa + t * da;
    if (t <= NEAR || t >= ray.t || h < 0 || h > length) {
      return false;
    }
    ray.meet(t, this);
    ray.a = h;
    return true;
  }

  @Override
  void describe(Ray ray, Surface at) {
    double h = ray.a;
    double x = at.x - foot.x() - h * axis.x();
    double y = at.y - foot.y() - h * axis.y();
    double z = at.z - foot.z() - h * axis.z();
    double s = 1 / Math.sqrt(x * x + y * y + z * z);
    at.u = h;
    at.v = 0;
    at.w = 0;
    at.face(x * s, y * s, z * s, ray);
  }
}
