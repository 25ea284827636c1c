package org.duskply.examples.trace;

/** A ball, or with three radii an egg along the world's axes. */
public final class Ball extends Shape {
  private static final double NEAR = 1e-5;
  private final Vec centre;
  private final Vec radii;

  public Ball(Vec centre, Vec radii, Texture texture, int seed) {
    super(texture, seed, Math.max(radii.y(), Math.max(radii.x(), radii.z())), centre);
    this.centre = centre;
    this.radii = radii;
  }

  public Ball(Vec centre, double radius, Texture texture, int seed) {
    this(centre, new Vec(radius, radius, radius), texture, seed);
  }

  @Override
  boolean meets(Ray ray) {
    double x = (ray.ox - centre.x()) / radii.x();
    double y = (ray.oy - centre.y()) / radii.y();
    double z = (ray.oz - centre.z()) / radii.z();
    double dx = ray.dx / radii.x();
    double dy = ray.dy / radii.y();
    double dz = ray.dz / radii.z();
    double a = dx * dx + dy * dy + dz * dz;
    double b = x * dx + y * dy + z * dz;
    double root = b * b - a * (x * x + y * y + z * z - 1);
    if (root < 0) {
      return false;
    }
    double s = Math.sqrt(root);
    double t = (-b - s) / a;
    t = t > NEAR ? t : (-b + s) / a;
    if (t <= NEAR || t >= ray.t) {
      return false;
    }
    ray.meet(t, this);
    return true;
  }

  @Override
  void describe(Ray ray, Surface at) {
    at.u = at.x - centre.x();
    at.v = at.y - centre.y();
    at.w = at.z - centre.z();
    double x = at.u / (radii.x() * radii.x());
    double y = at.v / (radii.y() * radii.y());
    double z = at.w / (radii.z() * radii.z());
    double s = 1 / Math.sqrt(x * x + y * y + z * z);
    at.face(x * s, y * s, z * s, ray);
  }
}
