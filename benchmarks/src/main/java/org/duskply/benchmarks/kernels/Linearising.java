package org.duskply.benchmarks.kernels;

import java.util.List;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.Matrix3;
import org.duskply.engine.frame.Exif;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.frame.Lineariser;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.recipe.NamedSpace;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/** A frame's samples, as they are stored, to linear light: chunk by chunk in cache. */
@OperationsPerInvocation(Fused.PIXELS)
public class Linearising extends Megapixels {
  /** What the samples are, and whether they have primaries of their own. */
  public enum Stored {
    BYTES(Samples.Kind.BYTES, 255, NamedSpace.SRGB),
    SHORTS(Samples.Kind.SHORTS, 65535, NamedSpace.SRGB),
    SHORTS_OF_OTHER_PRIMARIES(Samples.Kind.SHORTS, 65535, NamedSpace.REC2020),
    FLOATS(Samples.Kind.FLOATS, 1, NamedSpace.SRGB);

    private final Samples.Kind kind;
    private final int full;
    private final NamedSpace working;

    Stored(Samples.Kind kind, int full, NamedSpace working) {
      this.kind = kind;
      this.full = full;
      this.working = working;
    }
  }

  private static final ColourSpace SRGB = ColourSpace.of(NamedSpace.SRGB);
  private static final Region AREA = Region.ofSize(Content.ROW, Fused.PIXELS / Content.ROW);

  @Param public Stored stored = Stored.SHORTS;

  private Samples samples = Samples.of(AREA, 3, new byte[3 * Fused.PIXELS]);
  private Lineariser lineariser = lineariser();
  private final float[][] out = new float[3][Fused.PIXELS];

  @Setup
  public void prepare() {
    samples = samples(Content.VIEW.picture(Fused.PIXELS, 0));
    lineariser = lineariser();
    linearise();
    double[] matrix = ColourSpace.matrix(SRGB, ColourSpace.of(stored.working));
    for (int i = 0; i < Fused.PIXELS; i++) {
      double[] linear = new double[3];
      for (int c = 0; c < 3; c++) {
        linear[c] = EncodedAxis.decode(code(3 * i + c) / stored.full);
      }
      Answers.near(stored, i, out, Matrix3.apply(matrix, linear[0], linear[1], linear[2]));
    }
  }

  private Lineariser lineariser() {
    FrameInfo info =
        new FrameInfo(
            AREA.width(),
            AREA.height(),
            3,
            FrameInfo.Alpha.NONE,
            stored.kind,
            stored.full,
            null,
            null,
            Exif.NONE,
            List.of());
    return Lineariser.prepare(info, SRGB, ColourSpace.of(stored.working), 0);
  }

  private Samples samples(float[][] encoded) {
    int count = 3 * Fused.PIXELS;
    byte[] bytes = new byte[count];
    short[] shorts = new short[count];
    float[] floats = new float[count];
    for (int i = 0; i < count; i++) {
      float value = Math.max(0, Math.min(1, encoded[i % 3][i / 3]));
      bytes[i] = (byte) Math.round(255 * value);
      shorts[i] = (short) Math.round(65535 * value);
      floats[i] = value;
    }
    return switch (stored.kind) {
      case BYTES -> Samples.of(AREA, 3, bytes);
      case SHORTS -> Samples.of(AREA, 3, shorts);
      case FLOATS -> Samples.of(AREA, 3, floats);
    };
  }

  private double code(int index) {
    return switch (stored.kind) {
      case BYTES -> samples.bytes()[index] & 0xFF;
      case SHORTS -> samples.shorts()[index] & 0xFFFF;
      case FLOATS -> samples.floats()[index];
    };
  }

  @Benchmark
  public float[][] linearise() {
    for (int y = 0; y < AREA.height(); y++) {
      lineariser.row(samples, y, 0, Content.ROW, out[0], out[1], out[2], null, y * Content.ROW);
    }
    return out;
  }
}
