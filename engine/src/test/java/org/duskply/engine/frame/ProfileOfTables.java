package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * A small ICC profile of look-up tables, written byte by byte from ICC.1:2010 (lut8Type), for
 * tests.
 */
public final class ProfileOfTables {
  private static final int TABLE = 144;

  private ProfileOfTables() {}

  /**
   * A profile to Lab with two points an axis. Each device value takes light away from white in CMYK
   * and adds it to black in RGB, all of them alike; the result is neutral.
   *
   * @param device "RGB " or "CMYK"
   */
  public static byte[] of(String device) {
    int channels = device.equals("CMYK") ? 4 : 3;
    int points = 1 << channels;
    int length = 48 + 256 * channels + 3 * points + 256 * 3;
    ByteBuffer out = ByteBuffer.allocate(TABLE + length);
    out.putInt(0, TABLE + length).putInt(8, 0x02100000);
    text(out, 12, (channels == 4 ? "prtr" : "scnr") + device + "Lab ");
    text(out, 36, "acsp");
    out.putInt(68, 0xf6d6).putInt(72, 0x10000).putInt(76, 0xd32d);
    out.putInt(128, 1).putInt(136, TABLE).putInt(140, length);
    text(out, 132, "A2B0");
    text(out, TABLE, "mft1");
    out.put(TABLE + 8, (byte) channels).put(TABLE + 9, (byte) 3).put(TABLE + 10, (byte) 2);
    int at = TABLE + 48;
    at = straight(out, at, channels);
    for (int p = 0; p < points; p++) {
      double share = Integer.bitCount(p) / (double) channels;
      double light = channels == 4 ? 1 - share : share;
      out.put(at++, (byte) Math.round(255 * light)).put(at++, (byte) 128).put(at++, (byte) 128);
    }
    straight(out, at, 3);
    return out.array();
  }

  private static int straight(ByteBuffer out, int from, int curves) {
    for (int i = 0; i < 256 * curves; i++) {
      out.put(from + i, (byte) i);
    }
    return from + 256 * curves;
  }

  private static void text(ByteBuffer out, int at, String text) {
    out.put(at, text.getBytes(StandardCharsets.US_ASCII));
  }
}
