package org.duskply.examples.trace;

/** A thing that rays can meet. Shapes are frozen once made; any number of threads may ask them. */
public abstract class Shape {
  final Texture texture;
  final int seed;

  /** Points whose hull, widened by {@link #margin}, holds the shape. */
  private final Vec[] hull;

  private final double margin;

  Shape(Texture texture, int seed, double margin, Vec... hull) {
    this.texture = texture;
    this.seed = seed;
    this.margin = margin;
    this.hull = hull;
  }

  /** If the ray meets this shape nearer than {@code ray.t}, notes it there and returns true. */
  abstract boolean meets(Ray ray);

  /** Sets position on the shape and the direction it faces; the world's point is set already. */
  abstract void describe(Ray ray, Surface at);

  /** The nearest place that the ray met, with its texture painted. */
  public static void look(Ray ray, Shape shape, double pixel, Surface at) {
    at.x = ray.ox + ray.t * ray.dx;
    at.y = ray.oy + ray.t * ray.dy;
    at.z = ray.oz + ray.t * ray.dz;
    at.seed = shape.seed;
    at.pixel = pixel;
    at.side = 0;
    shape.describe(ray, at);
    shape.texture.paint(at);
  }

  /** The enclosing box along the given axes: least x, y, z, greatest x, y, z. */
  final double[] box(Axes axes) {
    double[] box = {1e30, 1e30, 1e30, -1e30, -1e30, -1e30};
    for (Vec p : hull) {
      double[] at = {axes.x(p), axes.y(p), axes.z(p)};
      for (int k = 0; k < 3; k++) {
        box[k] = Math.min(box[k], at[k] - margin);
        box[k + 3] = Math.max(box[k + 3], at[k] + margin);
      }
    }
    return box;
  }
}
