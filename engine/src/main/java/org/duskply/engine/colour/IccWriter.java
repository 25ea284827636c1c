package org.duskply.engine.colour;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import org.duskply.recipe.NamedSpace;

/**
 * Writes ICC profiles of the named spaces from their numbers: version 4.2, primaries and tone
 * curve, by ICC.1:2004-10 (clauses 7.2, 7.3, 8.3.3 and the types of clause 10). The same bytes
 * every time: the date is fixed and the identifier is the MD5 that clause 7.2.18 asks for.
 *
 * <p>Columns are rounded so that they sum to the white exactly, which keeps grey neutral through
 * the file; the curve is a formula (parametricCurveType 0 or 3), not a table.
 */
public final class IccWriter {
  private static final int HEADER = 128;
  private static final int VERSION = 0x04200000;
  private static final String COPYRIGHT = "No rights reserved";

  private IccWriter() {}

  /** The profile of a named space; a new array. */
  public static byte[] profile(NamedSpace name) {
    ColourSpace space = ColourSpace.of(name);
    Map<String, byte[]> tags = new LinkedHashMap<>();
    tags.put("desc", text(description(name)));
    tags.put("cprt", text(COPYRIGHT));
    tags.put("wtpt", numbers("XYZ ", rounded(White.profileConnection())));
    tags.put("chad", numbers("sf32", rounded(adaptation(space))));
    int[] columns = columns(space);
    for (int channel = 0; channel < 3; channel++) {
      int[] column = {columns[channel], columns[3 + channel], columns[6 + channel]};
      tags.put("rgb".charAt(channel) + "XYZ", numbers("XYZ ", column));
    }
    byte[] curve = curve(space.curve(0));
    for (String tag : new String[] {"rTRC", "gTRC", "bTRC"}) {
      tags.put(tag, curve);
    }
    return assemble(tags);
  }

  /** What programs show for a profile: our own words, no registered name of another. */
  static String description(NamedSpace name) {
    return "Duskply " + (name == NamedSpace.SRGB ? "sRGB" : name.key());
  }

  private static double[] adaptation(ColourSpace space) {
    return Bradford.between(space.white(), White.profileConnection());
  }

  /** The nine numbers in 1/65536; what rounding leaves of the sum goes to green, the largest. */
  private static int[] columns(ColourSpace space) {
    int[] columns = rounded(NamedMatch.adapted(space));
    int[] white = rounded(White.profileConnection());
    for (int row = 0; row < 3; row++) {
      columns[3 * row + 1] = white[row] - columns[3 * row] - columns[3 * row + 2];
    }
    return columns;
  }

  private static int[] rounded(double... values) {
    int[] fixed = new int[values.length];
    for (int i = 0; i < values.length; i++) {
      fixed[i] = (int) StrictMath.floor(values[i] * 65536 + 0.5);
    }
    return fixed;
  }

  private static byte[] numbers(String type, int[] fixed) {
    ByteBuffer out = ByteBuffer.allocate(8 + 4 * fixed.length);
    out.put(ascii(type)).putInt(0);
    for (int number : fixed) {
      out.putInt(number);
    }
    return out.array();
  }

  private static byte[] curve(TransferCurve curve) {
    if (!(curve instanceof ParametricCurve p)) {
      throw new IllegalArgumentException("not a formula: " + curve);
    }
    boolean plain = p.slope() == 0;
    int[] fixed =
        plain ? rounded(p.gamma()) : rounded(p.gamma(), p.a(), p.b(), p.slope(), p.join());
    ByteBuffer out = ByteBuffer.allocate(12 + 4 * fixed.length);
    out.put(ascii("para")).putInt(0).putShort((short) (plain ? 0 : 3)).putShort((short) 0);
    for (int number : fixed) {
      out.putInt(number);
    }
    return out.array();
  }

  /** A multiLocalizedUnicodeType of one English record. */
  private static byte[] text(String words) {
    byte[] utf16 = words.getBytes(StandardCharsets.UTF_16BE);
    ByteBuffer out = ByteBuffer.allocate(28 + utf16.length);
    out.put(ascii("mluc")).putInt(0).putInt(1).putInt(12);
    out.put(ascii("enUS")).putInt(utf16.length).putInt(28).put(utf16);
    return out.array();
  }

  /** Header, tag table and data, each block at a multiple of four; neighbours share equal ones. */
  private static byte[] assemble(Map<String, byte[]> tags) {
    int end = HEADER + 4 + 12 * tags.size();
    ByteBuffer out =
        ByteBuffer.allocate(end + tags.values().stream().mapToInt(IccWriter::room).sum());
    out.position(HEADER).putInt(tags.size());
    byte[] before = {};
    for (Map.Entry<String, byte[]> tag : tags.entrySet()) {
      byte[] data = tag.getValue();
      if (data != before) {
        out.put(end, data);
        end += room(data);
      }
      out.put(ascii(tag.getKey())).putInt(end - room(data)).putInt(data.length);
      before = data;
    }
    putHeader(out, end);
    byte[] profile = Arrays.copyOf(out.array(), end);
    System.arraycopy(identifier(profile), 0, profile, 84, 16);
    return profile;
  }

  private static int room(byte[] data) {
    return (data.length + 3) & ~3;
  }

  private static void putHeader(ByteBuffer out, int size) {
    out.putInt(0, size).putInt(8, VERSION);
    out.position(12).put(ascii("mntrRGB XYZ "));
    short[] date = {2026, 1, 1, 0, 0, 0};
    for (short number : date) {
      out.putShort(number);
    }
    out.put(ascii("acsp"));
    int[] white = rounded(White.profileConnection());
    out.putInt(68, white[0]).putInt(72, white[1]).putInt(76, white[2]);
  }

  /** MD5 of the profile while flags, intent and identifier are 0, as they still are. */
  private static byte[] identifier(byte[] profile) {
    try {
      return MessageDigest.getInstance("MD5").digest(profile);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has MD5", e);
    }
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
