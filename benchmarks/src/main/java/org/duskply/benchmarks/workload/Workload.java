package org.duskply.benchmarks.workload;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;

/**
 * A composite as it is met at the desk, always the same: a base, pops lightened through polygons of
 * twelve corners, one sky laid normally through a large one, one frame laid at 0.6, one more pop,
 * and a final curve.
 *
 * @param name what it is called
 * @param width of the frames, in pixels
 * @param height of the frames, in pixels
 * @param pops how many of the layers are pops
 * @param least smallest radius of a pop's polygon, in pixels
 * @param most greatest radius of a pop's polygon, in pixels
 * @param format of the frames
 * @param compress of the frames, where they are TIFFs
 * @param deflateLevel how hard zlib packs deflated frames; 0: as our own deliverables are packed
 * @param everywhere whether every mask covers the whole picture, whatever its layer's polygon
 */
public record Workload(
    String name,
    int width,
    int height,
    int pops,
    double least,
    double most,
    Format format,
    Compress compress,
    int deflateLevel,
    boolean everywhere) {
  private static final int CORNERS = 12;
  private static final double SKY_RADIUS = 1500;
  private static final long SEED = 24;

  /** The final curve: {@code v^POWER} on the encoded value. */
  static final double POWER = 0.95;

  /**
   * A frame over those before it.
   *
   * @param frame its number; the base is 0
   * @param lighten whether it lightens; else it is laid normally
   * @param opacity 0 to 1
   * @param sigma of the Gaussian that softens the polygon, in pixels
   * @param corners x and y of each of the polygon that its light falls about
   */
  record Layer(int frame, boolean lighten, double opacity, double sigma, List<double[]> corners) {}

  private static final Workload W24 = of("W24", 6000, 4000, 21, 250, 750);

  /** All of them. */
  public static List<Workload> all() {
    return List.of(
        W24,
        new Workload("W24-full", 6000, 4000, 21, 250, 750, Format.TIFF, Compress.DEFLATE, 0, true),
        new Workload(
            "W24-full-zlib", 6000, 4000, 21, 250, 750, Format.TIFF, Compress.DEFLATE, 6, true),
        new Workload("W24-lzw", 6000, 4000, 21, 250, 750, Format.TIFF, Compress.LZW, 0, false),
        new Workload("W24-jpeg", 6000, 4000, 21, 250, 750, Format.JPEG, Compress.NONE, 0, false),
        of("W100", 6000, 4000, 100, 250, 750),
        of("W24-100MP", 12000, 8400, 21, 500, 1500),
        of("small", 600, 400, 21, 25, 75));
  }

  /** The one of that name. */
  public static Optional<Workload> called(String name) {
    return all().stream().filter(w -> w.name.equals(name)).findFirst();
  }

  private static Workload of(
      String name, int width, int height, int pops, double least, double most) {
    return new Workload(
        name, width, height, pops, least, most, Format.TIFF, Compress.DEFLATE, 0, false);
  }

  /** The file of a frame, from the workload's folder. */
  public String file(int frame) {
    String ending = format == Format.JPEG ? ".jpg" : ".tif";
    return String.format(Locale.ROOT, "frames/%03d%s", frame, ending);
  }

  /** Frames, the base included. */
  public int frames() {
    return pops + 3;
  }

  /** The layers in the order in which they are done; the last is a pop. */
  List<Layer> layers() {
    SplittableRandom random = new SplittableRandom(SEED);
    double scale = width / 6000.0;
    List<Layer> layers = new ArrayList<>();
    for (int i = 1; i < pops; i++) {
      layers.add(new Layer(i, true, 1, 8 * scale, polygon(random, least, most)));
    }
    double sky = SKY_RADIUS * scale;
    layers.add(new Layer(pops, false, 1, 1.5 * scale, polygon(random, sky, sky)));
    layers.add(new Layer(pops + 1, false, 0.6, 8 * scale, polygon(random, least, most)));
    layers.add(new Layer(pops + 2, true, 1, 8 * scale, polygon(random, least, most)));
    return layers;
  }

  /** Corners of the polygon through which a layer shows. */
  List<double[]> mask(Layer layer) {
    return everywhere ? ring(width / 2.0, height / 2.0, 1.5 * width) : layer.corners();
  }

  /**
   * Where a frame's own light goes off: the middle of its layer's corners; of the base, 0 and 0.
   */
  double[] light(int frame) {
    double[] middle = new double[2];
    for (Layer layer : layers()) {
      if (layer.frame() == frame) {
        for (double[] corner : layer.corners()) {
          middle[0] += corner[0] / layer.corners().size();
          middle[1] += corner[1] / layer.corners().size();
        }
      }
    }
    return middle;
  }

  /** Whether a frame's file holds the same as that of another workload. */
  boolean shares(int frame, Workload other) {
    return width == other.width
        && height == other.height
        && format == other.format
        && compress == other.compress
        && deflateLevel == other.deflateLevel
        && frame < other.frames()
        && Arrays.equals(light(frame), other.light(frame));
  }

  private static List<double[]> ring(double x, double y, double radius) {
    List<double[]> corners = new ArrayList<>();
    for (int i = 0; i < CORNERS; i++) {
      double angle = 2 * StrictMath.PI * i / CORNERS;
      corners.add(
          new double[] {
            Math.rint(x + radius * StrictMath.cos(angle)),
            Math.rint(y + radius * StrictMath.sin(angle))
          });
    }
    return corners;
  }

  /** Corners about a centre inside the picture, in order of their angles. */
  private List<double[]> polygon(SplittableRandom random, double from, double to) {
    double x = width * (0.1 + 0.8 * random.nextDouble());
    double y = height * (0.1 + 0.8 * random.nextDouble());
    double radius = from + (to - from) * random.nextDouble();
    List<double[]> corners = new ArrayList<>();
    for (int i = 0; i < CORNERS; i++) {
      double angle = 2 * StrictMath.PI * (i + 0.6 * random.nextDouble()) / CORNERS;
      double reach = radius * (0.75 + 0.25 * random.nextDouble());
      corners.add(
          new double[] {
            Math.rint(4 * (x + reach * StrictMath.cos(angle))) / 4,
            Math.rint(4 * (y + reach * StrictMath.sin(angle))) / 4
          });
    }
    return corners;
  }
}
