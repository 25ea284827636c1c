package org.duskply.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.duskply.engine.blend.BlendKernel;
import org.duskply.engine.blend.Blends;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.deliver.Sink;
import org.duskply.engine.deliver.SinkSpec;
import org.duskply.engine.deliver.Sinks;
import org.duskply.engine.filter.Gaussian;
import org.duskply.engine.frame.FrameReader;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.FrameSources;
import org.duskply.engine.mask.Outline;
import org.duskply.engine.mask.OutlineRaster;
import org.duskply.engine.pixel.Encoded;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.step.Blend;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/**
 * What {@link Kernels} works on: a picture of about a megapixel, always the same. Each set-up runs
 * its kernel once and compares the answer with the formula in plain double.
 */
public final class Work {
  private static final int SIDE = 1024;

  /** Pixels of the picture. */
  static final int PIXELS = SIDE * SIDE;

  private static final Region AREA = Region.ofSize(SIDE, SIDE);

  private Work() {}

  /** Two pictures of three planes. */
  @State(Scope.Thread)
  public static class Blending {
    private final BlendKernel kernel = Blends.of(Blend.LIGHTEN);
    private final float[][] below = {noise(PIXELS, 1), noise(PIXELS, 2), noise(PIXELS, 3)};
    private final float[][] frame = {noise(PIXELS, 4), noise(PIXELS, 5), noise(PIXELS, 6)};
    float[][] out = new float[3][PIXELS];

    void run(int chunk) {
      for (int from = 0; from < PIXELS; from += chunk) {
        kernel.run(below, frame, out, from, from + chunk);
      }
    }

    @Setup
    public void check() {
      run(PIXELS);
      for (int p = 0; p < 3; p++) {
        for (int i = 0; i < PIXELS; i++) {
          float b = below[p][i];
          float f = frame[p][i];
          close(out[p][i], b > f ? b : f, 0, "lighten");
        }
      }
    }
  }

  /** A picture of three planes in linear light. */
  @State(Scope.Thread)
  public static class Encoding {
    /** What {@link Encoded} promises on 0…1. */
    private static final double BOUND = 0.02 / 65535;

    float[] linear = noise(3 * PIXELS, 3);
    float[] chunk = new float[3 * PIXELS];

    @Setup
    public void check() {
      System.arraycopy(linear, 0, chunk, 0, linear.length);
      Encoded.encode(chunk, 0, linear.length);
      for (int i = 0; i < linear.length; i += 97) {
        close(chunk[i], Encoded.encodeExactly(linear[i]), BOUND, "encode");
      }
    }
  }

  /** A plane with a straight upright edge, and what is around it. */
  abstract static class Feather {
    private final Gaussian gaussian;
    private final double sigma;
    private final double bound;
    private final Planes in;
    private final Planes out = new Planes(AREA, 1);

    Feather(double radius, double bound) {
      this.gaussian = Gaussian.of(radius);
      this.sigma = radius / 2;
      this.bound = bound;
      Region around = gaussian.needs(AREA);
      this.in = new Planes(around, 1);
      for (int y = around.top(); y < around.bottom(); y++) {
        for (int x = Math.max(SIDE / 2, around.left()); x < around.right(); x++) {
          in.plane(0)[in.at(x, y)] = 1;
        }
      }
    }

    Planes run() {
      gaussian.apply(in, 0, out, 0);
      return out;
    }

    /** Compares with the share of the normalised, sampled Gaussian that reaches over the edge. */
    @Setup
    public void check() {
      run();
      for (int x = 0; x < SIDE; x += 31) {
        close(out.plane(0)[out.at(x, 17)], share(x), bound, "feather");
      }
    }

    private double share(int x) {
      int reach = (int) Math.ceil(8 * sigma);
      double inside = 0;
      double all = 0;
      for (int d = -reach; d <= reach; d++) {
        double weight = StrictMath.exp(-((double) d * d) / (2 * sigma * sigma));
        all += weight;
        inside += x + d >= SIDE / 2 ? weight : 0;
      }
      return inside / all;
    }
  }

  /**
   * Weighted sample by sample. The bound: four standard deviations leave out 7e-5 of the weight at
   * most, rounding 1e-6.
   */
  @State(Scope.Thread)
  public static class SmallFeather extends Feather {
    public SmallFeather() {
      super(24, 1e-4);
    }
  }

  /** Weighted by cells. The bound is what {@link Gaussian} promises. */
  @State(Scope.Thread)
  public static class LargeFeather extends Feather {
    public LargeFeather() {
      super(400, 1e-3);
    }
  }

  /** A star of 100 points. */
  @State(Scope.Thread)
  public static class Drawing {
    private static final int CORNERS = 200;

    private final List<Point> corners = star();
    final OutlineRaster raster = OutlineRaster.of(Outline.ofPolygon(corners, 1), FillRule.NONZERO);
    final Region area = AREA;
    float[] coverage = new float[PIXELS];

    private static List<Point> star() {
      List<Point> corners = new ArrayList<>();
      for (int i = 0; i < CORNERS; i++) {
        double angle = 2 * StrictMath.PI * i / CORNERS;
        double radius = i % 2 == 0 ? 500 : 300;
        corners.add(
            new Point(512 + radius * StrictMath.cos(angle), 512 + radius * StrictMath.sin(angle)));
      }
      return corners;
    }

    /**
     * The sum of all coverage is the area by the shoelace formula; each pixel is 1e-6 off at most.
     */
    @Setup
    public void check() {
      raster.fill(area, coverage);
      double sum = 0;
      for (float share : coverage) {
        sum += share;
      }
      double twice = 0;
      for (int i = 0; i < CORNERS; i++) {
        Point a = corners.get(i);
        Point b = corners.get((i + 1) % CORNERS);
        twice += a.x() * b.y() - b.x() * a.y();
      }
      close(sum, Math.abs(twice) / 2, 1e-6 * PIXELS, "outline");
    }
  }

  /** A frame's file as the engine itself delivers it. */
  @State(Scope.Thread)
  public static class Decoding {
    private static final int ROWS = 64;
    private static final int FULL = 65535;

    private final Path file;
    final FrameSource source;
    final FrameReader reader;

    public Decoding() {
      try {
        file = Files.createTempFile("duskply-benchmark", ".tif");
      } catch (IOException e) {
        throw new IllegalStateException("No room for a frame of 6 MB in the temporary folder", e);
      }
      write(file);
      source = FrameSources.open(file);
      reader = source.reader();
    }

    /** A slope with noise in the low byte, so that packing finds about as little as in a frame. */
    private static int code(int x, int y, int channel) {
      int mixed = ((y * SIDE + x) * 3 + channel) * 0x9E3779B1;
      mixed = (mixed ^ mixed >>> 15) * 0x85EBCA6B;
      return 24 * x + 24 * y + (mixed >>> 24);
    }

    private static void write(Path file) {
      ColourSpace srgb = ColourSpace.of(NamedSpace.SRGB);
      SinkSpec spec =
          new SinkSpec(
              file,
              Format.TIFF,
              16,
              NamedSpace.SRGB,
              Compress.DEFLATE,
              1,
              SIDE,
              SIDE,
              ROWS,
              srgb,
              SinkSpec.DOTS_PER_INCH,
              SinkSpec.SOFTWARE);
      try (Sink sink = Sinks.open(spec)) {
        for (int band = 0; band < sink.bands(); band++) {
          sink.append(band, sink.encode(band, rows(AREA.rows(band * ROWS, (band + 1) * ROWS))));
        }
        sink.commit();
      }
    }

    private static Planes rows(Region area) {
      Planes rows = new Planes(area, 3);
      for (int c = 0; c < 3; c++) {
        for (int y = area.top(); y < area.bottom(); y++) {
          for (int x = 0; x < SIDE; x++) {
            double encoded = (double) code(x, y, c) / FULL;
            rows.plane(c)[rows.at(x, y)] = (float) Encoded.decodeExactly(encoded);
          }
        }
      }
      return rows;
    }

    /** Every sample comes back as the code that it was. */
    @Setup
    public void check() {
      for (int unit = 0; unit < source.units(); unit++) {
        var samples = reader.read(unit);
        Region area = samples.area();
        for (int y = area.top(); y < area.bottom(); y++) {
          for (int x = 0; x < SIDE; x++) {
            for (int c = 0; c < 3; c++) {
              close(samples.shorts()[samples.at(x, y) + c] & FULL, code(x, y, c), 0, "strips");
            }
          }
        }
      }
    }

    @TearDown(Level.Trial)
    public void delete() throws IOException {
      reader.close();
      Files.deleteIfExists(file);
    }
  }

  private static float[] noise(int count, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    float[] values = new float[count];
    for (int i = 0; i < count; i++) {
      values[i] = (float) random.nextDouble();
    }
    return values;
  }

  private static void close(double answer, double expected, double bound, String what) {
    if (!(Math.abs(answer - expected) <= bound)) {
      throw new IllegalStateException(
          what + " answers " + answer + " where it should be " + expected);
    }
  }
}
