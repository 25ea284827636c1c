package org.duskply.examples.trace;

/** A triangle with a direction at each corner, so that many of them look like one curved skin. */
public final class Facet extends Shape {
  private static final double NEAR = 1e-5;

  /** A corner: where, which way the skin faces there, and two numbers for the texture. */
  public record Corner(Vec place, Vec facing, double u, double v) {}

  private final Corner first;
  private final Corner second;
  private final Corner third;
  private final Vec edge2;
  private final Vec edge3;

  public Facet(Corner first, Corner second, Corner third, Texture texture, int seed) {
    super(texture, seed, 1e-5, first.place(), second.place(), third.place());
    this.first = first;
    this.second = second;
    this.third = third;
    edge2 = second.place().minus(first.place());
    edge3 = third.place().minus(first.place());
  }

  @Override
  boolean meets(Ray ray) {
    double px = ray.dy * edge3.z() - ray.dz * edge3.y();
    double py = ray.dz * edge3.x() - ray.dx * edge3.z();
    double pz = ray.dx * edge3.y() - ray.dy * edge3.x();
    double det = edge2.x() * px + edge2.y() * py + edge2.z() * pz;
    if (Math.abs(det) < 1e-14) {
      return false;
    }
    double inverse = 1 / det;
    double x = ray.ox - first.place().x();
    double y = ray.oy - first.place().y();
    double z = ray.oz - first.place().z();
    double a = (x * px + y * py + z * pz) * inverse;
    if (a < 0 || a > 1) {
      return false;
    }
    double qx = y * edge2.z() - z * edge2.y();
    double qy = z * edge2.x() - x * edge2.z();
    double qz = x * edge2.y() - y * edge2.x();
    double b = (ray.dx * qx + ray.dy * qy + ray.dz * qz) * inverse;
    if (b < 0 || a + b > 1) {
      return false;
    }
    double t = (edge3.x() * qx + edge3.y() * qy + edge3.z() * qz) * inverse;
    if (t <= NEAR || t >= ray.t) {
      return false;
    }
    ray.meet(t, this);
    ray.a = a;
    ray.b = b;
    return true;
  }

  @Override
  void describe(Ray ray, Surface at) {
    double c = 1 - ray.a - ray.b;
    Vec flat = edge2.cross(edge3).unit();
    at.face(flat.x(), flat.y(), flat.z(), ray);
    Vec round =
        first
            .facing()
            .times(c)
            .plus(second.facing().times(ray.a))
            .plus(third.facing().times(ray.b));
    Vec n = round.unit();
    double side = n.x() * at.nx + n.y() * at.ny + n.z() * at.nz < 0 ? -1 : 1;
    at.nx = n.x() * side;
    at.ny = n.y() * side;
    at.nz = n.z() * side;
    at.u = first.u() * c + second.u() * ray.a + third.u() * ray.b;
    at.v = first.v() * c + second.v() * ray.a + third.v() * ray.b;
    at.w = 0;
  }
}
