package org.duskply.engine.colour;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Writes ICC profiles byte by byte for tests, sound ones and lying ones, without any of the code
 * that is tested. Columns are those printed for sRGB in ICC v4 profiles.
 */
final class ProfileBytes {
  private static final int HEADER = 128;

  private final Map<String, byte[]> tags = new LinkedHashMap<>();
  private final ByteBuffer header = ByteBuffer.allocate(HEADER);

  private ProfileBytes(int version, String space) {
    header.putInt(8, version);
    header.position(12).put(ascii("mntr" + space + "XYZ "));
    header.position(36).put(ascii("acsp"));
    header.putInt(68, 0xF6D6).putInt(72, 0x10000).putInt(76, 0xD32D);
  }

  /** An RGB profile of version 2.1 with the primaries of sRGB and no curves yet. */
  static ProfileBytes rgb() {
    return new ProfileBytes(0x02100000, "RGB ")
        .tag("desc", text("sRGB"))
        .tag("wtpt", xyz(0.9642, 1, 0.8249))
        .tag("rXYZ", xyz(0.436035, 0.222488, 0.013916))
        .tag("gXYZ", xyz(0.385117, 0.716904, 0.097061))
        .tag("bXYZ", xyz(0.143051, 0.060608, 0.713913));
  }

  /** A grey profile without its curve. */
  static ProfileBytes grey() {
    return new ProfileBytes(0x02100000, "GRAY").tag("wtpt", xyz(0.9642, 1, 0.8249));
  }

  ProfileBytes tag(String name, byte[] data) {
    tags.put(name, data);
    return this;
  }

  ProfileBytes without(String name) {
    tags.remove(name);
    return this;
  }

  /** The same curve for red, green and blue. */
  ProfileBytes curves(byte[] curve) {
    return tag("rTRC", curve).tag("gTRC", curve).tag("bTRC", curve);
  }

  /** Four characters of the header. */
  ProfileBytes header(int at, String four) {
    header.position(at).put(ascii(four));
    return this;
  }

  /** A number of the header. */
  ProfileBytes header(int at, int number) {
    header.putInt(at, number);
    return this;
  }

  byte[] bytes() {
    int at = HEADER + 4 + 12 * tags.size();
    int end = at;
    for (byte[] data : tags.values()) {
      end += (data.length + 3) & ~3;
    }
    ByteBuffer out = ByteBuffer.allocate(end).put(header.array()).putInt(tags.size());
    out.putInt(0, end);
    for (Map.Entry<String, byte[]> tag : tags.entrySet()) {
      out.put(ascii(tag.getKey())).putInt(at).putInt(tag.getValue().length);
      at += (tag.getValue().length + 3) & ~3;
    }
    for (byte[] data : tags.values()) {
      out.put(data).position((out.position() + 3) & ~3);
    }
    return out.array();
  }

  /** Where in finished bytes the entry of a tag stands: signature, offset, size. */
  static int entry(byte[] profile, String name) {
    for (int at = HEADER + 4; ; at += 12) {
      if (new String(profile, at, 4, StandardCharsets.US_ASCII).equals(name)) {
        return at;
      }
    }
  }

  static byte[] xyz(double x, double y, double z) {
    return fixed("XYZ ", x, y, z);
  }

  /** An s15Fixed16ArrayType. */
  static byte[] adaptation(double... matrix) {
    return fixed("sf32", matrix);
  }

  /** A curveType of 16-bit numbers: none, one gamma of 1/256, or samples. */
  static byte[] curv(int... numbers) {
    ByteBuffer out = ByteBuffer.allocate(12 + 2 * numbers.length);
    out.put(ascii("curv")).putInt(0).putInt(numbers.length);
    for (int number : numbers) {
      out.putShort((short) number);
    }
    return out.array();
  }

  /** A curveType of samples of a curve. */
  static byte[] curv(TransferCurve curve, int samples) {
    int[] numbers = new int[samples];
    for (int i = 0; i < samples; i++) {
      numbers[i] = (int) Math.round(65535 * curve.toLinear(i / (samples - 1.0)));
    }
    return curv(numbers);
  }

  /** A parametricCurveType. */
  static byte[] para(int type, double... numbers) {
    ByteBuffer out = ByteBuffer.allocate(12 + 4 * numbers.length);
    out.put(ascii("para")).putInt(0).putShort((short) type).putShort((short) 0);
    for (double number : numbers) {
      out.putInt((int) Math.round(number * 65536));
    }
    return out.array();
  }

  private static byte[] text(String words) {
    return ByteBuffer.allocate(8 + words.length())
        .put(ascii("text"))
        .putInt(0)
        .put(ascii(words))
        .array();
  }

  private static byte[] fixed(String type, double... numbers) {
    ByteBuffer out = ByteBuffer.allocate(8 + 4 * numbers.length).put(ascii(type)).putInt(0);
    for (double number : numbers) {
      out.putInt((int) Math.round(number * 65536));
    }
    return out.array();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
