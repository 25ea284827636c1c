package org.duskply.engine.frame;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.duskply.engine.testing.TiffFile;

/** LZW against strings kept whole, as TIFF 6.0, section 13 tells it. */
class LzwUnpackerTest {
  private static final int CLEAR = 256;
  private static final int END = 257;
  private static final int CODES = 4096;

  private static byte[] pieces(byte[] packed, Random random, int longest) {
    Unpacked unpacked = new Unpacked(LzwUnpacker::new, packed);
    return unpacked.pieces(random, longest);
  }

  /** The plain way: a list of strings, and codes bit by bit. It ends where the code cannot be. */
  private static byte[] reference(byte[] packed) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    List<byte[]> table = cleared();
    byte[] before = new byte[0];
    int width = 9;
    for (long bit = 0; bit + width <= 8L * packed.length; ) {
      int code = 0;
      for (int i = 0; i < width; i++, bit++) {
        code = 2 * code + (packed[(int) (bit / 8)] >> (7 - bit % 8) & 1);
      }
      if (code == CLEAR) {
        table = cleared();
        before = new byte[0];
        width = 9;
        continue;
      }
      boolean next = code == table.size() && table.size() < CODES && before.length > 0;
      if (code == END || code >= table.size() && !next || before.length == 0 && code > CLEAR) {
        break;
      }
      byte[] string = next ? longer(before, before[0]) : table.get(code);
      if (before.length > 0 && table.size() < CODES) {
        table.add(longer(before, string[0]));
        width =
            table.size() >= 2047 ? 12 : table.size() >= 1023 ? 11 : table.size() >= 511 ? 10 : 9;
      }
      out.writeBytes(string);
      before = string;
    }
    return out.toByteArray();
  }

  private static List<byte[]> cleared() {
    List<byte[]> table = new ArrayList<>();
    for (int c = 0; c < CLEAR; c++) {
      table.add(new byte[] {(byte) c});
    }
    table.add(new byte[0]);
    table.add(new byte[0]);
    return table;
  }

  private static byte[] longer(byte[] string, byte last) {
    byte[] longer = Arrays.copyOf(string, string.length + 1);
    longer[string.length] = last;
    return longer;
  }

  @Property(seed = "91", tries = 60)
  void whatWasPackedComesBackInPiecesOfAnyLength(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    byte[] plain = Unpacked.content(random);
    byte[] packed = TiffFile.lzw(plain);
    int longest = random.nextBoolean() ? 12 : 9_000;
    Unpacked.assertSame(pieces(packed, random, longest), plain);
  }

  /** Codes that some writer might give: with or without Clear, beyond a full table, or wrong. */
  @Property(seed = "92", tries = 100)
  void anyCodesGiveWhatThePlainWayGives(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    boolean clears = random.nextInt(4) == 0;
    boolean wrong = random.nextBoolean();
    int newest = 1 + random.nextInt(200);
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    long held = 0;
    int bits = 0;
    int size = 258;
    boolean first = true;
    for (int n = random.nextInt(12_000); n > 0; n--) {
      int code;
      if (first) {
        code = random.nextInt(CLEAR);
      } else if (clears && random.nextInt(900) == 0) {
        code = CLEAR;
      } else if (wrong && random.nextInt(3_000) == 0) {
        code = random.nextInt(CODES);
      } else if (random.nextInt(3) == 0) {
        code = Math.max(0, Math.min(size, CODES - 1) - random.nextInt(newest));
        code = code == CLEAR || code == END ? 0 : code;
      } else {
        code = random.nextInt(CLEAR);
      }
      // Before the code is read, the table holds what the codes before it completed.
      int width = size >= 2047 ? 12 : size >= 1023 ? 11 : size >= 511 ? 10 : 9;
      held = held << width | code & (1 << width) - 1;
      bits += width;
      for (; bits >= 8; bits -= 8) {
        packed.write((int) (held >> bits - 8));
      }
      size = code == CLEAR ? 258 : first ? size : Math.min(CODES, size + 1);
      first = code == CLEAR;
    }
    packed.write((int) (held << 8 - bits));
    byte[] all = packed.toByteArray();
    Unpacked.assertSame(pieces(all, random, 5_000), reference(all));
  }

  @Property(seed = "93", tries = 100)
  void noiseGivesWhatThePlainWayGives(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    byte[] packed = new byte[random.nextInt(300)];
    random.nextBytes(packed);
    Unpacked.assertSame(pieces(packed, random, 50), reference(packed));
  }
}
