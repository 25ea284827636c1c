package org.duskply.examples.trace;

/**
 * The place where a ray met a shape: where it is, which way it faces, and how its texture looks.
 */
public final class Surface {
  /** The place in the world. */
  public double x;

  public double y;
  public double z;

  /** The direction that the surface faces, towards the side the ray came from. */
  public double nx;

  public double ny;
  public double nz;

  /** The same without the texture's relief. */
  public double flatX;

  public double flatY;
  public double flatZ;

  /**
   * The place on the shape, in metres along its own axes (kinds without axes: their parameters).
   */
  public double u;

  public double v;
  public double w;

  /** Which pair of sides of a block: 0 right, 1 up, 2 ahead. */
  public int side;

  /** A number of the shape's own, so that no two planks are alike. */
  public int seed;

  /** The width that one pixel covers here, in metres: finer texture is left out. */
  public double pixel;

  /** What the texture says: share of light given back, red, green, blue. */
  public double red;

  public double green;
  public double blue;

  /** Strength and sharpness of the highlight. */
  public double gloss;

  public double shine;

  /** Share of the light that passes through a leaf or a canvas. */
  public double through;

  /** Light of its own, and the number of the lamp circuit it hangs on (−1: none). */
  public double glow;

  public double glowRed;
  public double glowGreen;
  public double glowBlue;
  public int circuit;

  /** True in the lit room behind the windows. */
  public boolean indoors;

  /** Sets the colour and forgets all that the last texture said. */
  public void colour(double r, double g, double b) {
    red = r;
    green = g;
    blue = b;
    gloss = 0;
    shine = 20;
    through = 0;
    glow = 0;
    circuit = -1;
    indoors = false;
  }

  /** Scales the colour. */
  public void tone(double by) {
    red *= by;
    green *= by;
    blue *= by;
  }

  /** Makes it a lamp of the given circuit. */
  public void lamp(int number, double r, double g, double b) {
    circuit = number;
    glow = 1;
    glowRed = r;
    glowGreen = g;
    glowBlue = b;
  }

  /** Leans the facing direction by a small vector and keeps its length 1. */
  public void lean(double x, double y, double z) {
    double ax = nx + x;
    double ay = ny + y;
    double az = nz + z;
    double s = 1 / Math.sqrt(ax * ax + ay * ay + az * az);
    nx = ax * s;
    ny = ay * s;
    nz = az * s;
  }

  void face(double x, double y, double z, Ray ray) {
    double s = x * ray.dx + y * ray.dy + z * ray.dz > 0 ? -1 : 1;
    nx = flatX = x * s;
    ny = flatY = y * s;
    nz = flatZ = z * s;
  }
}
