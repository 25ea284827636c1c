package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.function.IntUnaryOperator;
import java.util.stream.Stream;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What our own deflating makes is read back by zlib, through {@link Inflater}. */
class DeflatingTest {
  private static byte[] bytes(int count, IntUnaryOperator at) {
    byte[] bytes = new byte[count];
    for (int i = 0; i < count; i++) {
      bytes[i] = (byte) at.applyAsInt(i);
    }
    return bytes;
  }

  /** As a zlib stream of its own. */
  private static byte[] packed(BlockPacker packer, byte[] raw) {
    Growing out = new Growing(1);
    new ZlibStrips(packer).pack(raw, raw.length, out);
    return out.toBytes();
  }

  private static void assertReadBack(byte[] packed, byte[] raw) throws DataFormatException {
    assertReadBack(new Inflater(), packed, raw);
  }

  private static void assertReadBack(Inflater inflater, byte[] packed, byte[] raw)
      throws DataFormatException {
    inflater.setInput(packed);
    byte[] back = new byte[raw.length + 1];
    int count = inflater.inflate(back);
    assertThat(inflater.finished()).as("the end and its checksum").isTrue();
    assertThat(inflater.getRemaining()).isZero();
    assertThat(Arrays.copyOf(back, count)).isEqualTo(raw);
    inflater.end();
  }

  static Stream<Arguments> strips() {
    Random random = new Random(5);
    byte[] noise = new byte[100_000];
    random.nextBytes(noise);
    return Stream.of(
        Arguments.of("nothing", new byte[0]),
        Arguments.of("one byte", new byte[] {7}),
        Arguments.of("noise", noise),
        Arguments.of("a block exactly", Arrays.copyOf(noise, LiteralPacker.BLOCK)),
        Arguments.of("and one more", Arrays.copyOf(noise, LiteralPacker.BLOCK + 1)),
        Arguments.of("zeros", new byte[200_000]),
        Arguments.of("one value", bytes(70_000, i -> 9)),
        Arguments.of("two values", bytes(70_000, i -> i % 3 == 0 ? 200 : 1)),
        Arguments.of("all values evenly", bytes(65_536, i -> i)),
        Arguments.of("words of all lengths", bytes(1 << 16, i -> Integer.numberOfLeadingZeros(i))),
        Arguments.of("noise about 0", bytes(50_001, i -> (int) (random.nextGaussian() * 20))));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("strips")
  void theInflaterReadsIt(String name, byte[] raw) throws DataFormatException {
    assertReadBack(packed(new LiteralPacker(), raw), raw);
    try (BlockPacker chosen = new ChosenPacker()) {
      assertReadBack(packed(chosen, raw), raw);
    }
  }

  static Stream<Arguments> inPieces() {
    return strips()
        .flatMap(
            strip ->
                Stream.of("literals", "chosen", "zlib")
                    .map(way -> Arguments.of(strip.get()[0], way, strip.get()[1])));
  }

  private static BlockPacker way(String name) {
    return switch (name) {
      case "literals" -> new LiteralPacker();
      case "chosen" -> new ChosenPacker();
      default -> new ZlibPacker(4, Deflater.FILTERED);
    };
  }

  /**
   * Pieces that each end on a whole byte, by packers of their own too, are one stream (RFC 1951
   * section 3.2.3: blocks follow one another, the last says so); after the last another begins.
   */
  @ParameterizedTest(name = "{0} by {1}")
  @MethodSource
  void inPieces(String name, String way, byte[] raw) throws DataFormatException {
    try (BlockPacker packer = way(way);
        BlockPacker other = way(way)) {
      Growing out = new Growing(1);
      int third = raw.length / 3;
      packer.pack(raw, third, false, out);
      byte[] middle = Arrays.copyOfRange(raw, third, 2 * third);
      packer.pack(middle, middle.length, false, out);
      packer.pack(raw, 0, false, out);
      byte[] rest = Arrays.copyOfRange(raw, 2 * third, raw.length);
      other.pack(rest, rest.length, true, out);
      assertReadBack(new Inflater(true), out.toBytes(), raw);

      Growing another = new Growing(1);
      other.pack(raw, raw.length, true, another);
      assertReadBack(new Inflater(true), another.toBytes(), raw);
    }
  }

  /** What a piece before held is not packed again: the pieces of a stream share its window. */
  @Test
  void aPieceRefersToTheOneBefore() throws DataFormatException {
    byte[] noise = new byte[8000];
    new Random(2).nextBytes(noise);
    try (BlockPacker packer = new ZlibPacker(6, Deflater.DEFAULT_STRATEGY)) {
      Growing out = new Growing(1);
      packer.pack(noise, noise.length, false, out);
      int before = out.count();
      packer.pack(noise, noise.length, true, out);
      assertThat(out.count() - before).isLessThan(200);
      byte[] both = Arrays.copyOf(noise, 2 * noise.length);
      System.arraycopy(noise, 0, both, noise.length, noise.length);
      assertReadBack(new Inflater(true), out.toBytes(), both);
    }
  }

  /** Runs of 0 of every length about those of one, two and three matches, at every offset of 8. */
  @Test
  void runsOfEveryLength() throws DataFormatException {
    LiteralPacker packer = new LiteralPacker();
    for (int length : new int[] {7, 8, 15, 257, 258, 259, 260, 516, 517, 518, 775, 5000}) {
      for (int offset = 0; offset < 9; offset++) {
        int from = 16 + offset;
        int to = from + length;
        byte[] raw = bytes(to + 20, i -> i >= from && i < to ? 0 : 1 + i % 7);
        assertReadBack(packed(packer, raw), raw);
      }
    }
  }

  @Property(tries = 200)
  void anyMixture(
      @ForAll long seed,
      @ForAll @IntRange(max = 140_000) int count,
      @ForAll @IntRange(max = 9) int flat)
      throws DataFormatException {
    Random random = new Random(seed);
    byte[] raw = new byte[count];
    for (int i = 0; i < count; ) {
      int end = Math.min(count, i + 1 + random.nextInt(2000));
      int spread = 1 << random.nextInt(8);
      boolean zero = random.nextInt(10) < flat;
      for (; i < end; i++) {
        raw[i] = zero ? 0 : (byte) random.nextInt(spread);
      }
    }
    assertReadBack(packed(new LiteralPacker(), raw), raw);
  }

  /** 258 bytes in a word of at most 2 bits and one of 1: a flat strip is next to nothing. */
  @Test
  void flatAreasTakeNoRoom() {
    byte[] flat = new byte[258 * 700];
    assertThat(packed(new LiteralPacker(), flat).length).isLessThan(700 * 3 / 8 + 200);
  }

  /** A stored block has 5 bytes of its own (RFC 1951 section 3.2.4), a zlib stream 6. */
  @Test
  void noiseGrowsByItsBlocksAlone() {
    byte[] noise = new byte[3 * LiteralPacker.BLOCK];
    new Random(3).nextBytes(noise);
    assertThat(packed(new LiteralPacker(), noise).length).isLessThanOrEqualTo(noise.length + 21);
  }

  /** What prediction leaves of samples with noise in their low bytes: looking for matches loses. */
  @Test
  void noiseIsPackedWithoutMatches() {
    byte[] raw = noisySamples(1);
    int least = packed(new LiteralPacker(), raw).length;
    assertThat(least).isLessThan(level(6, raw));
    try (BlockPacker chosen = new ChosenPacker()) {
      assertThat(packed(chosen, raw)).hasSize(least);
    }
  }

  /** Strips that repeat themselves are packed about as small as zlib's own choice makes them. */
  @Test
  void whatRepeatsIsPackedWithMatches() {
    byte[] raw = bytes(144_000, i -> 31 * (i % 700) >>> (i % 5));
    try (BlockPacker chosen = new ChosenPacker()) {
      assertThat(packed(chosen, raw).length).isLessThan((int) (1.03 * level(6, raw)));
    }
    assertThat(packed(new LiteralPacker(), raw).length).isGreaterThan(3 * level(6, raw));
  }

  private static byte[] noisySamples(long seed) {
    Random random = new Random(seed);
    byte[] raw = new byte[144_000];
    for (int i = 0; i < raw.length; i += 2) {
      int difference = (int) (random.nextGaussian() * 150);
      raw[i] = (byte) difference;
      raw[i + 1] = (byte) (difference >> 8);
    }
    return raw;
  }

  private static int level(int level, byte[] raw) {
    try (BlockPacker packer = new ZlibPacker(level, Deflater.DEFAULT_STRATEGY)) {
      return packed(packer, raw).length;
    }
  }
}
