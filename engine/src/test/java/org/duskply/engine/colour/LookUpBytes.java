package org.duskply.engine.colour;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;

/**
 * Writes look-up tables of ICC profiles byte by byte (ICC.1:2010, clauses 10.8 to 10.10), for
 * tests.
 */
final class LookUpBytes {
  /** What the grid holds at a place: one of three numbers from 0 to 1. */
  interface Colour {
    double at(double[] axis, int channel);
  }

  private LookUpBytes() {}

  /** A whole profile of version 2.1, or 4.2 where a table is of the staged kind. */
  static byte[] profile(String device, String connection, Map<String, byte[]> tables) {
    boolean staged = tables.values().stream().anyMatch(t -> t[0] == 'm' && t[1] == 'A');
    ProfileBytes bytes =
        ProfileBytes.grey()
            .header(8, staged ? 0x04200000 : 0x02100000)
            .header(12, device.equals("CMYK") ? "prtr" : "scnr")
            .header(16, device)
            .header(20, connection);
    tables.forEach(bytes::tag);
    return bytes.bytes();
  }

  /** lut16Type with straight curves of two samples. */
  static byte[] lut16(int channels, int grid, Colour colour) {
    ByteBuffer head = head("mft2", channels, grid, 52).putShort((short) 2).putShort((short) 2);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(head.array());
    straight16(out, channels);
    points(out, channels, grid, colour, 2);
    straight16(out, 3);
    return out.toByteArray();
  }

  /** lut8Type with straight curves. */
  static byte[] lut8(int channels, int grid, Colour colour) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(head("mft1", channels, grid, 48).array());
    straight8(out, channels);
    points(out, channels, grid, colour, 1);
    straight8(out, 3);
    return out.toByteArray();
  }

  /**
   * lutAToBType: curves of one exponent before the grid, then a matrix that halves, then doubles.
   */
  static byte[] staged(int channels, int grid, Colour colour, double exponent) {
    ByteArrayOutputStream points = new ByteArrayOutputStream();
    byte[] axes = new byte[20];
    Arrays.fill(axes, 0, channels, (byte) grid);
    axes[16] = 2;
    points.writeBytes(axes);
    points(points, channels, grid, colour, 2);
    while (points.size() % 4 != 0) {
      points.write(0);
    }
    byte[] curve = ProfileBytes.para(0, exponent);
    byte[] straight = ProfileBytes.curv(0, 65535);
    int lastAt = 32;
    int matrixAt = lastAt + 3 * straight.length;
    int middleAt = matrixAt + 48;
    int gridAt = middleAt + 3 * straight.length;
    int firstAt = gridAt + points.size();
    ByteBuffer out = ByteBuffer.allocate(firstAt + channels * curve.length);
    out.put(ascii("mAB ")).putInt(0).put((byte) channels).put((byte) 3).putShort((short) 0);
    out.putInt(lastAt).putInt(matrixAt).putInt(middleAt).putInt(gridAt).putInt(firstAt);
    for (int c = 0; c < 3; c++) {
      out.put(straight);
    }
    double[] matrix = {0.5, 0.25, 0.25, 0, 1, 0, 0, 0, 1, 0, 0, 0};
    for (double m : matrix) {
      out.putInt((int) (m * 65536));
    }
    for (int c = 0; c < 3; c++) {
      out.put(straight);
    }
    out.put(points.toByteArray());
    for (int c = 0; c < channels; c++) {
      out.put(curve);
    }
    return out.array();
  }

  private static ByteBuffer head(String type, int channels, int grid, int length) {
    ByteBuffer head = ByteBuffer.allocate(length);
    head.put(ascii(type))
        .putInt(0)
        .put((byte) channels)
        .put((byte) 3)
        .put((byte) grid)
        .put((byte) 0);
    for (int i = 0; i < 9; i++) {
      head.putInt(i % 4 == 0 ? 65536 : 0);
    }
    return head;
  }

  private static void straight16(ByteArrayOutputStream out, int curves) {
    for (int c = 0; c < curves; c++) {
      out.writeBytes(new byte[] {0, 0, (byte) 255, (byte) 255});
    }
  }

  private static void straight8(ByteArrayOutputStream out, int curves) {
    for (int i = 0; i < 256 * curves; i++) {
      out.write(i);
    }
  }

  /** All points, the last axis running fastest. */
  private static void points(
      ByteArrayOutputStream out, int channels, int grid, Colour colour, int width) {
    int count = (int) Math.round(Math.pow(grid, channels));
    double[] axis = new double[channels];
    for (int p = 0; p < count; p++) {
      for (int c = channels - 1, rest = p; c >= 0; c--, rest /= grid) {
        axis[c] = rest % grid / (grid - 1.0);
      }
      for (int c = 0; c < 3; c++) {
        double v = colour.at(axis, c);
        int code = (int) Math.round(v * (width == 1 ? 255 : 65535));
        if (width == 2) {
          out.write(code >> 8);
        }
        out.write(code);
      }
    }
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
