package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Inflating against zlib, through {@link Inflater}: whole streams, cut ones and wrong ones. */
class InflateUnpackerTest {
  private static final int[] FLUSHES = {
    Deflater.NO_FLUSH, Deflater.SYNC_FLUSH, Deflater.FULL_FLUSH
  };
  private static final int[] STRATEGIES = {
    Deflater.DEFAULT_STRATEGY, Deflater.FILTERED, Deflater.HUFFMAN_ONLY
  };

  /** What comes out of a stream, whether it went wrong, and whether its end is yet to come. */
  private record Outcome(byte[] bytes, boolean damaged, boolean waits) {}

  private static Outcome zlib(byte[] packed) {
    Inflater inflater = new Inflater();
    inflater.setInput(packed);
    byte[] bytes = new byte[1 << 16];
    int count = 0;
    boolean damaged = false;
    try {
      int got;
      do {
        bytes = count == bytes.length ? Arrays.copyOf(bytes, 2 * count) : bytes;
        got = inflater.inflate(bytes, count, bytes.length - count);
        count += got;
      } while (got > 0 || count == bytes.length);
    } catch (DataFormatException e) {
      damaged = true;
      count = (int) inflater.getBytesWritten();
    }
    boolean waits = !damaged && !inflater.finished();
    inflater.end();
    return new Outcome(Arrays.copyOf(bytes, count), damaged, waits);
  }

  /**
   * By our own decoder, and by the one that is chosen. Where zlib waits for more bytes ours may
   * know already that none could make it right: zlib reads on if no code for lengths of words is
   * there.
   */
  private static void assertAsZlib(byte[] packed, Random random, int longest) {
    Outcome expected = zlib(packed);
    for (Unpacked unpacked :
        List.of(
            new Unpacked(InflateUnpackerTest::own, packed),
            new Unpacked(InflateUnpacker::new, packed))) {
      Unpacked.assertSame(unpacked.pieces(random, longest), expected.bytes());
      if (!expected.waits()) {
        assertThat(damaged(unpacked.unpacker())).isEqualTo(expected.damaged());
      }
    }
  }

  private static NoiseInflater own(ByteSource file) {
    return new NoiseInflater(new PackedInput(file));
  }

  private static boolean damaged(Unpacker unpacker) {
    return ((DeflateUnpacker) unpacker).damaged();
  }

  private static byte[] deflated(byte[] plain, Random random) {
    Deflater deflater = new Deflater(random.nextInt(10));
    deflater.setStrategy(STRATEGIES[random.nextInt(STRATEGIES.length)]);
    int flush = FLUSHES[random.nextInt(FLUSHES.length)];
    return deflated(deflater, plain, flush, 1 + random.nextInt(20_000));
  }

  /** Deflates so many bytes at a time. */
  private static byte[] deflated(Deflater deflater, byte[] plain, int flush, int piece) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] room = new byte[1000];
    for (int at = 0; at < plain.length; at += piece) {
      deflater.setInput(plain, at, Math.min(plain.length - at, piece));
      int got;
      do {
        got = deflater.deflate(room, 0, room.length, flush);
        out.write(room, 0, got);
      } while (got > 0 || !deflater.needsInput());
    }
    deflater.finish();
    while (!deflater.finished()) {
      out.write(room, 0, deflater.deflate(room));
    }
    deflater.end();
    return out.toByteArray();
  }

  private static byte[] content(Random random) {
    return random.nextBoolean() ? Unpacked.content(random) : photograph(random);
  }

  /** Differences of 16-bit samples: noise below, nearly nothing above. */
  private static byte[] photograph(Random random) {
    byte[] plain = new byte[random.nextInt(300_000)];
    double spread = Math.scalb(1, 2 + random.nextInt(10));
    for (int i = 0; i < plain.length - 1; i += 2) {
      int sample = (int) (spread * random.nextGaussian());
      plain[i] = (byte) sample;
      plain[i + 1] = (byte) (sample >> 8);
    }
    return plain;
  }

  private static int longest(Random random) {
    return new int[] {12, 1_000, 40_000, 400_000}[random.nextInt(4)];
  }

  @Property(seed = "71", tries = 200)
  void whatWasDeflatedComesBack(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    byte[] plain = content(random);
    Unpacked own = new Unpacked(InflateUnpackerTest::own, deflated(plain, random));
    Unpacked.assertSame(own.pieces(random, longest(random)), plain);
    assertThat(damaged(own.unpacker())).isFalse();
  }

  @Property(seed = "72", tries = 300)
  void aCutStreamGivesAsMuch(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    byte[] packed = deflated(content(random), random);
    byte[] cut = Arrays.copyOf(packed, random.nextInt(packed.length));
    assertAsZlib(cut, random, longest(random));
    Unpacked own = new Unpacked(InflateUnpackerTest::own, cut);
    own.pieces(random, longest(random));
    assertThat(damaged(own.unpacker())).isFalse();
  }

  @Property(seed = "73", tries = 600)
  void aWrongStreamGoesAsFar(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    byte[] packed = deflated(content(random), random);
    int within = random.nextBoolean() ? packed.length : Math.min(packed.length, 80);
    for (int n = 1 + random.nextInt(3); n > 0; n--) {
      packed[random.nextInt(within)] ^= (byte) (1 << random.nextInt(8));
    }
    assertAsZlib(packed, random, longest(random));
  }

  @Property(seed = "74", tries = 300)
  void noiseGoesAsFar(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    byte[] packed = new byte[2 + random.nextInt(600)];
    random.nextBytes(packed);
    packed[0] = 0x78;
    packed[1] = (byte) 0x9C;
    packed[2 % packed.length] &= random.nextBoolean() ? -1 : ~2; // fixed codes, or its own
    assertAsZlib(packed, random, longest(random));
  }

  /** Codes as a tree grows at random: words of up to 15 bits, for any symbol that there is. */
  @Property(seed = "75", tries = 400)
  void anyCodesAndAnySymbols(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    RandomBlocks blocks = new RandomBlocks(random);
    assertAsZlib(blocks.stream(1 + random.nextInt(4)), random, longest(random));
  }

  @Test
  void theChecksumCounts() {
    byte[] packed = deflated(new byte[] {1, 2, 3}, new Random(1));
    packed[packed.length - 1]++;
    Unpacked own = new Unpacked(InflateUnpackerTest::own, packed);
    assertThat(own.pieces(new Random(1), 100)).containsExactly(1, 2, 3);
    assertThat(damaged(own.unpacker())).isTrue();
  }

  /** In the midst of what is read quickly: what comes behind it is not read on. */
  @Test
  void aRepetitionOfWhatIsNotThereEndsIt() {
    byte[] packed = new RandomBlocks(new Random(1)).reachingBefore(200);
    Outcome expected = zlib(packed);
    assertThat(expected.bytes()).hasSize(200);
    assertThat(expected.damaged()).isTrue();
    assertAsZlib(packed, new Random(1), 100_000);
  }

  /** The first stream tells what it made to the second one by nothing. */
  @Test
  void aRunDoesNotReachIntoTheOneBefore() {
    byte[] plain = Unpacked.content(new Random(2));
    byte[] packed = deflated(plain, new Random(2));
    RandomBlocks blocks = new RandomBlocks(new Random(3));
    byte[] reaching = blocks.repeatingAtOnce();
    byte[] both = Arrays.copyOf(packed, packed.length + reaching.length);
    System.arraycopy(reaching, 0, both, packed.length, reaching.length);
    NoiseInflater unpacker =
        (NoiseInflater) new Unpacked(InflateUnpackerTest::own, both).unpacker();
    byte[] room = new byte[plain.length + 1];
    unpacker.start(0, packed.length);
    assertThat(unpacker.read(room, 0, room.length)).isEqualTo(plain.length);
    unpacker.start(packed.length, reaching.length);
    assertThat(unpacker.read(room, 0, room.length)).isZero();
    assertThat(unpacker.damaged()).isTrue();
  }

  @Property(seed = "76", tries = 50)
  void whatIsPassedOverIsNotMissed(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    byte[] plain = content(random);
    int passed = random.nextInt(plain.length + 1);
    Unpacker unpacker = new Unpacked(InflateUnpackerTest::own, deflated(plain, random)).unpacker();
    unpacker.skip(passed, new byte[1 + random.nextInt(50_000)]);
    byte[] rest = new byte[plain.length - passed];
    assertThat(unpacker.read(rest, 0, rest.length)).isEqualTo(rest.length);
    Unpacked.assertSame(rest, Arrays.copyOfRange(plain, passed, plain.length));
  }

  /** Runs that suit one and the other in turn. */
  @Test
  void eachRunIsReadByWhatSuitsIt() {
    byte[] noise = photograph(new Random(4));
    byte[] repeats = new byte[50_000];
    Random random = new Random(5);
    for (int i = 0; i < repeats.length; i++) {
      repeats[i] = (byte) (i % 9 < 3 ? random.nextInt(20) : repeats[Math.max(0, i - 1000)]);
    }
    byte[][] plain = {noise, repeats, noise, repeats};
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    int[] starts = new int[plain.length + 1];
    for (int i = 0; i < plain.length; i++) {
      Deflater deflater = new Deflater(i % 2 == 0 ? 1 : 9);
      deflater.setStrategy(i % 2 == 0 ? Deflater.HUFFMAN_ONLY : Deflater.DEFAULT_STRATEGY);
      all.writeBytes(deflated(deflater, plain[i], Deflater.NO_FLUSH, plain[i].length));
      starts[i + 1] = all.size();
    }
    Unpacker unpacker = new Unpacked(InflateUnpacker::new, all.toByteArray()).unpacker();
    NoiseInflater own =
        (NoiseInflater) new Unpacked(InflateUnpackerTest::own, all.toByteArray()).unpacker();
    for (int i = 0; i < plain.length; i++) {
      unpacker.start(starts[i], starts[i + 1] - starts[i]);
      byte[] read = new byte[plain[i].length];
      assertThat(unpacker.read(read, 0, read.length)).isEqualTo(read.length);
      Unpacked.assertSame(read, plain[i]);
      own.start(starts[i], starts[i + 1] - starts[i]);
      assertThat(own.repeats()).isBetween(i % 2 == 0 ? 0 : 0.3, i % 2 == 0 ? 0.01 : 1);
    }
    unpacker.close();
  }
}
