package org.duskply.examples.trace;

/**
 * A box with any orientation: plank, wall, stone, step. Its own axes are in metres from its centre.
 */
public final class Block extends Shape {
  private static final double NEAR = 1e-5;
  private final double cx;
  private final double cy;
  private final double cz;
  private final Vec right;
  private final Vec up;
  private final Vec ahead;
  private final double halfX;
  private final double halfY;
  private final double halfZ;

  /** A box centred on the axes' origin, with its whole sizes. */
  public Block(Axes axes, double width, double height, double depth, Texture texture, int seed) {
    super(texture, seed, 1e-5, corners(axes, width / 2, height / 2, depth / 2));
    cx = axes.origin().x();
    cy = axes.origin().y();
    cz = axes.origin().z();
    right = axes.right();
    up = axes.up();
    ahead = axes.ahead();
    halfX = width / 2;
    halfY = height / 2;
    halfZ = depth / 2;
  }

  @Override
  boolean meets(Ray ray) {
    double x = ray.ox - cx;
    double y = ray.oy - cy;
    double z = ray.oz - cz;
    double inverse = 1 / along(right, ray.dx, ray.dy, ray.dz);
    double place = along(right, x, y, z);
    double t0 = (-halfX - place) * inverse;
    double t1 = (halfX - place) * inverse;
    double in = t0 < t1 ? t0 : t1;
    double out = t0 < t1 ? t1 : t0;
    inverse = 1 / along(up, ray.dx, ray.dy, ray.dz);
    place = along(up, x, y, z);
    t0 = (-halfY - place) * inverse;
    t1 = (halfY - place) * inverse;
    double near = t0 < t1 ? t0 : t1;
    double far = t0 < t1 ? t1 : t0;
    in = near > in ? near : in;
    out = far < out ? far : out;
    if (in > out) {
      return false;
    }
    inverse = 1 / along(ahead, ray.dx, ray.dy, ray.dz);
    place = along(ahead, x, y, z);
    t0 = (-halfZ - place) * inverse;
    t1 = (halfZ - place) * inverse;
    near = t0 < t1 ? t0 : t1;
    far = t0 < t1 ? t1 : t0;
    in = near > in ? near : in;
    out = far < out ? far : out;
    if (in > out) {
      return false;
    }
    double t = in > NEAR ? in : out;
    if (t <= NEAR || t >= ray.t) {
      return false;
    }
    ray.meet(t, this);
    return true;
  }

  @Override
  void describe(Ray ray, Surface at) {
    double x = at.x - cx;
    double y = at.y - cy;
    double z = at.z - cz;
    at.u = along(right, x, y, z);
    at.v = along(up, x, y, z);
    at.w = along(ahead, x, y, z);
    double gapX = Math.abs(Math.abs(at.u) - halfX);
    double gapY = Math.abs(Math.abs(at.v) - halfY);
    double gapZ = Math.abs(Math.abs(at.w) - halfZ);
    at.side = gapX < gapY ? (gapX < gapZ ? 0 : 2) : gapY < gapZ ? 1 : 2;
    Vec n = at.side == 0 ? right : at.side == 1 ? up : ahead;
    at.face(n.x(), n.y(), n.z(), ray);
  }

  private static double along(Vec axis, double x, double y, double z) {
    return axis.x() * x + axis.y() * y + axis.z() * z;
  }

  private static Vec[] corners(Axes axes, double x, double y, double z) {
    Vec[] corners = new Vec[8];
    for (int i = 0; i < 8; i++) {
      corners[i] = axes.point((i & 1) == 0 ? -x : x, (i & 2) == 0 ? -y : y, (i & 4) == 0 ? -z : z);
    }
    return corners;
  }
}
