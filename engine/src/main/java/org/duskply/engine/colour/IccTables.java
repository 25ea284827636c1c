package org.duskply.engine.colour;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.colour.IccException.Reason;
import org.duskply.engine.colour.LookUpTables.Connection;
import org.duskply.recipe.NamedSpace;
import org.jspecify.annotations.Nullable;

/**
 * Reads the look-up tables of ICC profiles (ICC.1:2010, clauses 10.8 lut16Type, 10.9 lut8Type and
 * 10.10 lutAToBType). Of the rendering intents the media-relative colorimetric one is taken, so
 * that white stays white and what lies inside the gamut stays as it is; a profile that lacks it is
 * taken at the perceptual one, then the saturation one.
 */
final class IccTables {
  private static final String[] INTENTS = {"A2B1", "A2B0", "A2B2"};

  /** Numbers of each function type of parametricCurveType. */
  private static final int[] PARAMETERS = {1, 3, 4, 5, 7};

  private final String tag;
  private final ByteBuffer bytes;
  private final boolean throughLab;
  private final int channels;

  private IccTables(String tag, ByteBuffer bytes, boolean throughLab, int channels) {
    this.tag = tag;
    this.bytes = bytes;
    this.throughLab = throughLab;
    this.channels = channels;
  }

  /** Whether there are tables from device values to the connection space. */
  static boolean there(IccTags tags) {
    return intent(tags) != null;
  }

  private static @Nullable String intent(IccTags tags) {
    for (String intent : INTENTS) {
      if (tags.has(intent)) {
        return intent;
      }
    }
    return null;
  }

  /**
   * The tables.
   *
   * @param channels how many device values the profile's header calls for: 3 or 4
   * @throws IccException if there are none, or they contradict themselves
   */
  static LookUpTables read(IccTags tags, int channels) {
    String tag = intent(tags);
    if (tag == null) {
      throw new IccException(
          Reason.DAMAGED, "The colour profile is damaged: it has neither primaries nor tables.");
    }
    boolean throughLab = tags.headerSignature(20).equals("Lab ");
    if (!throughLab && !tags.headerSignature(20).equals("XYZ ")) {
      throw IccTags.damaged(tag, "leads to no known colour space");
    }
    ByteBuffer bytes = tags.need(tag, 32);
    IccTables tables = new IccTables(tag, bytes, throughLab, channels);
    if ((bytes.get(8) & 0xff) != channels || (bytes.get(9) & 0xff) != 3) {
      throw IccTags.damaged(tag, "has another number of colours than the header says");
    }
    return switch (IccTags.signature(bytes, 0)) {
      case "mft1" -> tables.plain(1, 48, 256, 256);
      case "mft2" -> tables.plain(2, 52, tables.count(48), tables.count(50));
      case "mAB " -> tables.staged();
      default -> throw IccTags.damaged(tag, "is not a table of colours");
    };
  }

  private int count(int at) {
    need(at, 2);
    int count = bytes.getShort(at) & 0xffff;
    if (count < 2 || count > 4096) {
      throw IccTags.damaged(tag, "has curves of " + count + " samples");
    }
    return count;
  }

  /** lut8 and lut16: curves, grid, curves. Their matrix serves device values that are XYZ. */
  private LookUpTables plain(int width, int at, int inputs, int outputs) {
    int[] grid = new int[channels];
    Arrays.fill(grid, bytes.get(10) & 0xff);
    long points = points(grid);
    long gridAt = at + (long) width * channels * inputs;
    long lastAt = gridAt + width * points;
    TableCurve[] first = curves(at, width, channels, inputs);
    short[] table = table(gridAt, width, points);
    TableCurve[] last = curves(lastAt, width, 3, outputs);
    Connection connection =
        !throughLab ? Connection.XYZ : width == 2 ? Connection.LAB_OF_LUT16 : Connection.LAB;
    return new LookUpTables(
        first, grid, table, new TableCurve[0], new double[0], last, connection, light());
  }

  private TableCurve[] curves(long at, int width, int count, int samples) {
    need(at, (long) width * count * samples);
    TableCurve[] curves = new TableCurve[count];
    for (int c = 0; c < count; c++) {
      double[] values = new double[samples];
      for (int i = 0; i < samples; i++) {
        values[i] = code((int) at + width * (c * samples + i), width) / 65535.0;
      }
      curves[c] = new TableCurve(values);
    }
    return curves;
  }

  /** A stored number in 65,535ths. */
  private int code(int at, int width) {
    return width == 1 ? (bytes.get(at) & 0xff) * 257 : bytes.getShort(at) & 0xffff;
  }

  private short[] table(long at, int width, long points) {
    need(at, width * points);
    short[] table = new short[(int) points];
    for (int i = 0; i < table.length; i++) {
      table[i] = (short) code((int) at + width * i, width);
    }
    return table;
  }

  /** How many numbers a grid holds, three a point; no more than a profile can. */
  private long points(int[] grid) {
    long points = 3;
    for (int along : grid) {
      if (along < 1 || points > IccReader.MAX_BYTES) {
        throw IccTags.damaged(tag, "has a grid that cannot be");
      }
      points *= along;
    }
    return points;
  }

  /**
   * lutAToBType: A curves and grid, M curves and matrix, B curves; those at offset 0 are absent.
   */
  private LookUpTables staged() {
    long last = Integer.toUnsignedLong(bytes.getInt(12));
    long matrixAt = Integer.toUnsignedLong(bytes.getInt(16));
    long middle = Integer.toUnsignedLong(bytes.getInt(20));
    long gridAt = Integer.toUnsignedLong(bytes.getInt(24));
    long first = Integer.toUnsignedLong(bytes.getInt(28));
    if ((gridAt == 0 || first == 0) && channels != 3) {
      throw IccTags.damaged(tag, "lacks a grid");
    }
    TableCurve[] device = new TableCurve[channels];
    Arrays.fill(device, TableCurve.identity());
    int[] grid = {};
    short[] table = {};
    if (gridAt != 0) {
      device = first == 0 ? device : staged(first, channels);
      need(gridAt, 20);
      grid = new int[channels];
      for (int c = 0; c < channels; c++) {
        grid[c] = bytes.get((int) gridAt + c) & 0xff;
      }
      int width = bytes.get((int) gridAt + 16) == 1 ? 1 : 2;
      table = table(gridAt + 20, width, points(grid));
    }
    return new LookUpTables(
        device,
        grid,
        table,
        middle == 0 ? new TableCurve[0] : staged(middle, 3),
        matrixAt == 0 ? new double[0] : matrix(matrixAt),
        last == 0 ? new TableCurve[0] : staged(last, 3),
        throughLab ? Connection.LAB : Connection.XYZ,
        light());
  }

  private double[] matrix(long at) {
    need(at, 48);
    double[] matrix = new double[12];
    for (int i = 0; i < 12; i++) {
      matrix[i] = IccTags.fixed(bytes, (int) at + 4 * i);
    }
    return matrix;
  }

  /** Curves one behind the other, each beginning at a multiple of four. */
  private TableCurve[] staged(long from, int count) {
    TableCurve[] curves = new TableCurve[count];
    long at = from;
    for (int c = 0; c < count; c++) {
      need(at, 12);
      int start = (int) at;
      long size;
      if (IccTags.signature(bytes, start).equals("curv")) {
        long samples = Integer.toUnsignedLong(bytes.getInt(start + 8));
        if (samples > IccReader.MAX_CURVE_SAMPLES) {
          throw IccTags.damaged(tag, "has curves of " + samples + " samples");
        }
        size = 12 + 2 * samples;
        need(at, size);
        curves[c] = sampled(start, (int) samples);
      } else if (IccTags.signature(bytes, start).equals("para")) {
        int type = bytes.getShort(start + 8) & 0xffff;
        if (type >= PARAMETERS.length) {
          throw IccTags.damaged(tag, "has a curve of an unknown formula");
        }
        size = 12 + 4L * PARAMETERS[type];
        need(at, size);
        curves[c] = TableCurve.of(formula(start, type));
      } else {
        throw IccTags.damaged(tag, "has a curve of an unknown kind");
      }
      at += (size + 3) / 4 * 4;
    }
    return curves;
  }

  private TableCurve sampled(int start, int samples) {
    if (samples == 0) {
      return TableCurve.identity();
    }
    if (samples == 1) {
      double gamma = (bytes.getShort(start + 12) & 0xffff) / 256.0;
      return TableCurve.of(v -> StrictMath.pow(v, gamma));
    }
    double[] values = new double[samples];
    for (int i = 0; i < samples; i++) {
      values[i] = (bytes.getShort(start + 12 + 2 * i) & 0xffff) / 65535.0;
    }
    return new TableCurve(values);
  }

  /** The formulas of ICC.1:2010, table 65: g, a, b, c, d, e, f in this order. */
  private DoubleUnaryOperator formula(int start, int type) {
    double[] p = new double[7];
    for (int i = 0; i < PARAMETERS[type]; i++) {
      p[i] = IccTags.fixed(bytes, start + 12 + 4 * i);
    }
    double a = type == 0 ? 1 : p[1];
    double toe = type < 3 ? (type == 0 || a == 0 ? 0 : -p[2] / a) : p[4];
    double above = type == 2 ? p[3] : type == 4 ? p[5] : 0;
    double below = type == 2 ? p[3] : type == 4 ? p[6] : 0;
    double slope = type >= 3 ? p[3] : 0;
    return v ->
        v >= toe
            ? StrictMath.pow(StrictMath.max(0, a * v + p[2]), p[0]) + above
            : slope * v + below;
  }

  private void need(long at, long count) {
    if (at + count > bytes.limit()) {
      throw IccTags.damaged(tag, "ends before its numbers do");
    }
  }

  private static ColourSpace light() {
    return ColourSpace.of(NamedSpace.REC2020);
  }
}
