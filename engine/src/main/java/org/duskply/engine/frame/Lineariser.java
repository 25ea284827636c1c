package org.duskply.engine.frame;

import java.util.concurrent.atomic.LongAdder;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.DecodeCurve;
import org.duskply.engine.colour.LookUpTables;
import org.duskply.engine.colour.Matrix3;
import org.duskply.engine.colour.MatrixKernel;
import org.duskply.engine.colour.TransferCurve;
import org.duskply.engine.frame.FrameInfo.Alpha;
import org.jspecify.annotations.Nullable;

/**
 * Turns native samples into linear working values. For each pixel, in this order:
 *
 * <ol>
 *   <li>associated alpha is divided out of the encoded colours (common practice: files hold alpha ×
 *       encoded colour);
 *   <li>the curve of the frame's colour space: for whole numbers a table of all codes, each the
 *       double result rounded once; or the {@linkplain LookUpTables look-up tables} of its profile,
 *       RGB or CMYK;
 *   <li>the matrix to the working primaries, unless they are the same, times that of a gel, if
 *       there is one; grey is neutral in every space and is copied to the three planes;
 *   <li>times 2^stops, unless stops is 0.
 * </ol>
 *
 * A gel belongs after the exposure; being a matrix it may as well come before that number, and
 * makes one matrix with the other.
 *
 * <p>Every value is finite: floats that are no number become 0, and values are held to ±65504.
 * Black and, with the same primaries, white are exact. Immutable but for its counter; any number of
 * threads may use one.
 */
public final class Lineariser {
  /** Largest magnitude that leaves here: that of a half float. */
  public static final float MOST = 65504;

  private static final int FINE = 65535;

  private final int channels;
  private final int colours;
  private final Alpha alpha;
  private final boolean covers;
  private final double fullScale;
  private final DecodeCurve[] curves; // for floats
  private final @Nullable LookUpTables device;
  private final float[][] tables;
  private final float[] alphaTable;
  private final float[] matrix;
  private final float factor;
  private final LongAdder held = new LongAdder();

  private Lineariser(FrameInfo info, ColourSpace source, ColourSpace working, Loading loading) {
    this.channels = info.channels();
    this.colours = info.colours();
    this.device = source.tables();
    this.alpha = info.alpha();
    this.covers = alpha != Alpha.NONE && !loading.opaque();
    this.fullScale = info.fullScale();
    this.curves = curves(source);
    this.tables = tables(info, source);
    this.alphaTable = alphaTable(info);
    this.matrix = matrix(source, working, loading.gel());
    this.factor = (float) StrictMath.pow(2, loading.stops());
  }

  private static DecodeCurve[] curves(ColourSpace source) {
    DecodeCurve[] curves = new DecodeCurve[3];
    for (int c = 0; c < curves.length; c++) {
      curves[c] = DecodeCurve.of(source.curve(c));
    }
    return curves;
  }

  /** From the frame's primaries to working ones and through the gel; empty where nothing is due. */
  private float[] matrix(ColourSpace source, ColourSpace working, double @Nullable [] gel) {
    boolean same = colours == 1 || source.samePrimaries(working);
    if (same) {
      return gel == null ? new float[0] : MatrixKernel.prepare(gel);
    }
    double[] m = ColourSpace.matrix(source, working);
    return MatrixKernel.prepare(gel == null ? m : Matrix3.multiply(gel, m));
  }

  /**
   * Prepares the tables for one frame.
   *
   * @param source the frame's colour space
   * @param working the working space; only its primaries and white count
   * @param stops of exposure, −32 to 32
   */
  public static Lineariser prepare(
      FrameInfo info, ColourSpace source, ColourSpace working, double stops) {
    return prepare(info, source, working, Loading.by(stops));
  }

  /** The same with all that a recipe may ask. */
  public static Lineariser prepare(
      FrameInfo info, ColourSpace source, ColourSpace working, Loading loading) {
    LookUpTables device = source.tables();
    if (device == null ? info.colours() > 3 : device.channels() != info.colours()) {
      throw new IllegalArgumentException(info.colours() + " colours in " + source);
    }
    return new Lineariser(info, source, working, loading);
  }

  /** Tables of all codes, or fine ones where alpha is divided out; none for floats. */
  private static float[][] tables(FrameInfo info, ColourSpace source) {
    if (info.kind() == Samples.Kind.FLOATS || source.tables() != null) {
      return new float[0][];
    }
    int last = info.alpha() == Alpha.ASSOCIATED ? FINE : (int) info.fullScale();
    int room = info.kind() == Samples.Kind.BYTES && last != FINE ? 256 : 65536;
    float[][] tables = new float[3][];
    for (int c = 0; c < 3; c++) {
      tables[c] = CodeTables.of(source.curve(c), last + 1, room);
    }
    return tables;
  }

  private static float[] alphaTable(FrameInfo info) {
    if (info.alpha() == Alpha.NONE || info.kind() == Samples.Kind.FLOATS) {
      return new float[0];
    }
    return CodeTables.of(
        TransferCurve.identity(),
        (int) info.fullScale() + 1,
        info.kind() == Samples.Kind.BYTES ? 256 : 65536);
  }

  /** How many planes there are to fill: 3, and a fourth for coverage where there is alpha. */
  public int planes() {
    return covers ? 4 : 3;
  }

  /** How many samples so far were no number or beyond ±65504. */
  public long held() {
    return held.sum();
  }

  /**
   * Fills one row.
   *
   * @param s native samples that hold row {@code y} from {@code left} to {@code right}
   * @param y the row
   * @param left first column
   * @param right one past the last column
   * @param coverage alpha, 0…1; may be null, and is left alone where there are 3 planes
   * @param at where column {@code left} goes in the arrays
   */
  public void row(
      Samples s,
      int y,
      int left,
      int right,
      float[] r,
      float[] g,
      float[] b,
      float @Nullable [] coverage,
      int at) {
    int from = s.at(left, y);
    int to = at + right - left;
    if (device != null) {
      look(device, s, from, right - left, r, g, b, at);
    } else if (colours == 1) {
      decode(s, from, 0, r, at, to);
      System.arraycopy(r, at, g, at, to - at);
      System.arraycopy(r, at, b, at, to - at);
    } else {
      decode(s, from, 0, r, at, to);
      decode(s, from, 1, g, at, to);
      decode(s, from, 2, b, at, to);
    }
    if (matrix.length > 0) {
      MatrixKernel.run(r, g, b, at, to, matrix);
    }
    scale(r, at, to);
    scale(g, at, to);
    scale(b, at, to);
    if (coverage != null && covers) {
      coverage(s, from + colours, coverage, at, to);
    }
  }

  /** Look-up tables are rare: samples become device values between 0 and 1 one by one. */
  private void look(
      LookUpTables device,
      Samples s,
      int from,
      int count,
      float[] r,
      float[] g,
      float[] b,
      int at) {
    float[][] values = new float[colours][count];
    for (int p = 0, i = from; p < count; p++, i += channels) {
      double whole = alpha == Alpha.ASSOCIATED ? s.value(i + colours) : fullScale;
      for (int c = 0; c < colours; c++) {
        values[c][p] = whole > 0 ? (float) (s.value(i + c) / whole) : 0;
      }
    }
    device.run(values, 0, count, r, g, b, at);
    held(r, at, at + count);
    held(g, at, at + count);
    held(b, at, at + count);
  }

  /** A profile's matrix may lead anywhere. */
  private void held(float[] plane, int at, int to) {
    int bent = 0;
    for (int i = at; i < to; i++) {
      float value = hold(plane[i]);
      bent += value == plane[i] ? 0 : 1;
      plane[i] = value;
    }
    if (bent > 0) {
      held.add(bent);
    }
  }

  private void decode(Samples s, int from, int channel, float[] out, int at, int to) {
    int first = from + channel;
    int alphaAt = from + colours;
    boolean divide = alpha == Alpha.ASSOCIATED;
    switch (s.kind()) {
      case BYTES -> {
        if (divide) {
          divided(s.bytes(), first, alphaAt, tables[channel], out, at, to);
        } else {
          lookUp(s.bytes(), first, tables[channel], out, at, to);
        }
      }
      case SHORTS -> {
        if (divide) {
          divided(s.shorts(), first, alphaAt, tables[channel], out, at, to);
        } else {
          lookUp(s.shorts(), first, tables[channel], out, at, to);
        }
      }
      case FLOATS -> floats(s.floats(), first, alphaAt, curves[channel], out, at, to);
    }
  }

  private void lookUp(byte[] in, int first, float[] table, float[] out, int at, int to) {
    int step = channels;
    for (int i = first, o = at; o < to; i += step, o++) {
      out[o] = table[in[i] & 0xff];
    }
  }

  private void lookUp(short[] in, int first, float[] table, float[] out, int at, int to) {
    int step = channels;
    for (int i = first, o = at; o < to; i += step, o++) {
      out[o] = table[in[i] & 0xffff];
    }
  }

  private void divided(
      byte[] in, int first, int alphaAt, float[] fine, float[] out, int at, int to) {
    for (int i = first, a = alphaAt, o = at; o < to; i += channels, a += channels, o++) {
      out[o] = divided(in[i] & 0xff, in[a] & 0xff, fine);
    }
  }

  private void divided(
      short[] in, int first, int alphaAt, float[] fine, float[] out, int at, int to) {
    for (int i = first, a = alphaAt, o = at; o < to; i += channels, a += channels, o++) {
      out[o] = divided(in[i] & 0xffff, in[a] & 0xffff, fine);
    }
  }

  /**
   * The linear value of {@code colour/alpha}, by straight lines between 65,536 exact values: within
   * 2⁻³⁰ of the curve of IEC 61966-2-1. Colour above alpha says nothing and is held to 1; without
   * alpha there is no colour.
   */
  private static float divided(int colour, int alpha, float[] fine) {
    if (colour == 0 || alpha == 0) {
      return alpha == 0 ? 0 : fine[0];
    }
    if (colour >= alpha) {
      return fine[FINE];
    }
    double place = (double) colour * FINE / alpha;
    int below = (int) place;
    double low = fine[below];
    return (float) (low + (place - below) * (fine[below + 1] - low));
  }

  private void floats(
      float[] in, int first, int alphaAt, DecodeCurve curve, float[] out, int at, int to) {
    boolean divide = alpha == Alpha.ASSOCIATED;
    int bent = 0;
    for (int i = first, a = alphaAt, o = at; o < to; i += channels, a += channels, o++) {
      float encoded = fullScale == 1 ? in[i] : (float) (in[i] / fullScale);
      if (divide) {
        float alphaHere = (float) (in[a] / fullScale);
        encoded = alphaHere > 0 ? encoded / alphaHere : 0;
      }
      float even = hold(encoded);
      float value = hold(curve.apply(even));
      bent += even == encoded && Math.abs(value) < MOST ? 0 : 1;
      out[o] = value;
    }
    if (bent > 0) {
      held.add(bent);
    }
  }

  private static float hold(float v) {
    return v >= -MOST && v <= MOST ? v : v > MOST ? MOST : v < -MOST ? -MOST : 0;
  }

  private void scale(float[] plane, int at, int to) {
    float f = factor;
    if (f != 1) {
      for (int i = at; i < to; i++) {
        plane[i] *= f;
      }
    }
  }

  private void coverage(Samples s, int first, float[] out, int at, int to) {
    switch (s.kind()) {
      case BYTES -> lookUp(s.bytes(), first, alphaTable, out, at, to);
      case SHORTS -> lookUp(s.shorts(), first, alphaTable, out, at, to);
      case FLOATS -> {
        float[] in = s.floats();
        for (int i = first, o = at; o < to; i += channels, o++) {
          float v = (float) (in[i] / fullScale);
          out[o] = v >= 1 ? 1 : v > 0 ? v : 0;
        }
      }
    }
  }
}
