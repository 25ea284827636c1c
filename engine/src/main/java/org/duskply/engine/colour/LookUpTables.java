package org.duskply.engine.colour;

/**
 * Colours by look-up tables, as ICC profiles of type lut8, lut16 and lutAToB hold them (ICC.1:2010,
 * clauses 10.8 to 10.10): from 3 or 4 device values, 0…1, to linear light in the primaries and
 * white of BT.2020. A stage that a profile leaves out is left out here:
 *
 * <ol>
 *   <li>a curve for each device value;
 *   <li>the grid, whose value between its points is that of the simplex around the place (sort the
 *       fractions, walk from the lower corner along the axes in that order);
 *   <li>a curve for each of three values, and a 3 × 4 matrix;
 *   <li>a curve for each of three values: the profile connection space, Lab or XYZ under D50;
 *   <li>Lab to XYZ (CIE 15), XYZ to BT.2020, Bradford-adapted.
 * </ol>
 *
 * Everything is computed in double and rounded once, so that it is the same everywhere; nothing is
 * clipped after the profile connection space. Immutable.
 */
public final class LookUpTables {
  /** Most device values. */
  static final int MOST_CHANNELS = 4;

  /** What the connection space's three values between 0 and 1 stand for. */
  enum Connection {
    /** L* in hundredths, a* and b* less 128 in 255ths. */
    LAB,
    /** As {@link #LAB} with 0xFF00 standing for 100 and 0x8000 for 0, as lut16 has it. */
    LAB_OF_LUT16,
    /** XYZ with 0x8000 standing for 1. */
    XYZ
  }

  /** CIE 15: below 6/29 the cube root is a straight line. */
  private static final double LINE = 6.0 / 29;

  private final int channels;
  private final TableCurve[] deviceCurves;
  private final int[] grid;
  private final int[] steps;
  private final short[] points;
  private final TableCurve[] middleCurves;
  private final double[] matrix;
  private final TableCurve[] lastCurves;
  private final Connection connection;
  private final double[] white;
  private final double[] toLight;

  /**
   * The stages of a profile.
   *
   * @param deviceCurves one for each device value
   * @param grid points along each device axis; empty for three device values without a grid
   * @param points three values each, the last axis running fastest
   * @param middleCurves three, or none
   * @param matrix twelve numbers: nine row by row, then three to add; or none
   * @param lastCurves three, or none
   */
  LookUpTables(
      TableCurve[] deviceCurves,
      int[] grid,
      short[] points,
      TableCurve[] middleCurves,
      double[] matrix,
      TableCurve[] lastCurves,
      Connection connection,
      ColourSpace light) {
    this.channels = deviceCurves.length;
    this.deviceCurves = deviceCurves;
    this.grid = grid;
    this.points = points;
    this.middleCurves = middleCurves;
    this.matrix = matrix;
    this.lastCurves = lastCurves;
    this.connection = connection;
    this.steps = new int[grid.length];
    for (int axis = grid.length - 1, step = 3; axis >= 0; step *= grid[axis], axis--) {
      steps[axis] = step;
    }
    this.white = White.profileConnection();
    this.toLight =
        Matrix3.multiply(Matrix3.inverse(light.toXyz()), Bradford.between(white, light.white()));
  }

  /** How many device values: 3 for RGB, 4 for CMYK (1 being all of an ink). */
  public int channels() {
    return channels;
  }

  /**
   * Converts a run of pixels. Values beyond 0…1 are held to it, as the tables end there.
   *
   * @param device one array for each device value
   * @param from first index there
   * @param count how many pixels
   * @param at where the first goes in {@code r}, {@code g} and {@code b}
   */
  public void run(float[][] device, int from, int count, float[] r, float[] g, float[] b, int at) {
    double[] in = new double[channels];
    double[] v = new double[3];
    int[] order = new int[channels];
    for (int i = 0; i < count; i++) {
      for (int c = 0; c < channels; c++) {
        in[c] = deviceCurves[c].at(device[c][from + i]);
      }
      look(in, order, v);
      bend(middleCurves, v);
      if (matrix.length > 0) {
        multiply(v);
      }
      bend(lastCurves, v);
      connect(v);
      r[at + i] = light(0, v);
      g[at + i] = light(3, v);
      b[at + i] = light(6, v);
    }
  }

  private static void bend(TableCurve[] curves, double[] v) {
    for (int c = 0; c < curves.length; c++) {
      v[c] = curves[c].at(v[c]);
    }
  }

  private void multiply(double[] v) {
    double x = v[0];
    double y = v[1];
    double z = v[2];
    for (int row = 0; row < 3; row++) {
      v[row] =
          matrix[3 * row] * x + matrix[3 * row + 1] * y + matrix[3 * row + 2] * z + matrix[9 + row];
    }
  }

  /** The grid's value; {@code in} is left holding fractions. */
  private void look(double[] in, int[] order, double[] v) {
    if (grid.length == 0) {
      System.arraycopy(in, 0, v, 0, 3);
      return;
    }
    int corner = 0;
    for (int c = 0; c < channels; c++) {
      double place = in[c] * (grid[c] - 1);
      int below = Math.min((int) place, Math.max(0, grid[c] - 2));
      corner += below * steps[c];
      in[c] = place - below;
      int rank = c;
      while (rank > 0 && in[order[rank - 1]] < in[c]) {
        order[rank] = order[rank - 1];
        rank--;
      }
      order[rank] = c;
    }
    double before = 1;
    v[0] = 0;
    v[1] = 0;
    v[2] = 0;
    for (int rank = 0; rank <= channels; rank++) {
      double fraction = rank < channels ? in[order[rank]] : 0;
      add(corner, before - fraction, v);
      if (rank < channels && grid[order[rank]] > 1) {
        corner += steps[order[rank]];
      }
      before = fraction;
    }
  }

  private void add(int corner, double weight, double[] v) {
    if (weight > 0) {
      double scaled = weight / 65535;
      v[0] += scaled * (points[corner] & 0xffff);
      v[1] += scaled * (points[corner + 1] & 0xffff);
      v[2] += scaled * (points[corner + 2] & 0xffff);
    }
  }

  /** The profile connection space to XYZ under D50. */
  private void connect(double[] v) {
    if (connection == Connection.XYZ) {
      for (int c = 0; c < 3; c++) {
        v[c] *= 65535.0 / 32768;
      }
      return;
    }
    boolean old = connection == Connection.LAB_OF_LUT16;
    double lightness = v[0] * (old ? 100 * 65535.0 / 65280 : 100);
    double a = v[1] * (old ? 65535.0 / 256 : 255) - 128;
    double b = v[2] * (old ? 65535.0 / 256 : 255) - 128;
    double y = (lightness + 16) / 116;
    v[0] = white[0] * cube(y + a / 500);
    v[1] = white[1] * cube(y);
    v[2] = white[2] * cube(y - b / 200);
  }

  private static double cube(double root) {
    return root > LINE ? root * root * root : 3 * LINE * LINE * (root - 4.0 / 29);
  }

  private float light(int row, double[] v) {
    return (float) (toLight[row] * v[0] + toLight[row + 1] * v[1] + toLight[row + 2] * v[2]);
  }
}
