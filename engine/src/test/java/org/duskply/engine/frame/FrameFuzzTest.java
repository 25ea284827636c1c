package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.testing.JpegBytes;
import org.duskply.engine.testing.PngFile;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/**
 * Files with some bytes changed, cut or doubled: each either opens and reads, or is refused in one
 * sentence, in bounded time and memory. The seed of a failure is part of its message.
 */
class FrameFuzzTest {
  private static final int ROUNDS = 400;

  private static byte[] spoil(byte[] file, Random random) {
    byte[] spoilt = file.clone();
    int changes = 1 + random.nextInt(4);
    for (int i = 0; i < changes; i++) {
      int at = random.nextBoolean() ? random.nextInt(spoilt.length) : tail(spoilt, random);
      spoilt[at] = (byte) (random.nextInt(3) == 0 ? 0xff : random.nextInt(256));
    }
    return random.nextInt(8) == 0
        ? Arrays.copyOf(spoilt, 1 + random.nextInt(spoilt.length))
        : spoilt;
  }

  /** A place among the last bytes, where our TIFF files have their directory. */
  private static int tail(byte[] file, Random random) {
    return file.length - 1 - random.nextInt(Math.min(file.length, 260));
  }

  /** A PNG whose checksums are made to match, or no change would get past them. */
  private static byte[] sealed(byte[] png) {
    ByteBuffer in = ByteBuffer.wrap(png);
    CRC32 sum = new CRC32();
    for (int at = 8; at + 12 <= png.length; ) {
      int length = in.getInt(at);
      if (length < 0 || length > png.length - at - 12) {
        break;
      }
      sum.reset();
      sum.update(png, at + 4, length + 4);
      in.putInt(at + 8 + length, (int) sum.getValue());
      at += 12 + length;
    }
    return png;
  }

  private static void sweep(String name, byte[] file) {
    int read = 0;
    for (int seed = 0; seed < ROUNDS; seed++) {
      byte[] bytes = spoil(file, new Random(seed));
      Path spoilt = Disk.file(name, name.endsWith(".png") ? sealed(bytes) : bytes);
      int round = seed;
      read +=
          Assertions.assertTimeoutPreemptively(
              Duration.ofSeconds(60), () -> once(spoilt, round) ? 1 : 0, "seed " + seed);
    }
    assertThat(read).as("files that still read").isBetween(1, ROUNDS - 1);
  }

  private static boolean once(Path file, int seed) {
    try {
      FrameSource source = FrameSources.open(file);
      if ((long) source.info().width() * source.info().height() > 4_000_000) {
        return false;
      }
      FrameColour colour = FrameColour.of(file.getFileName().toString(), source.info(), null);
      ColourSpace wide = ColourSpace.of(NamedSpace.REC2020);
      Lineariser lineariser = Lineariser.prepare(source.info(), colour.space(), wide, 0);
      int width = source.info().width();
      float[][] planes = new float[4][width];
      try (FrameReader reader = source.reader()) {
        for (int u = 0; u < source.units(); u++) {
          Samples s = reader.read(u);
          int y = s.area().top();
          lineariser.row(s, y, 0, width, planes[0], planes[1], planes[2], planes[3], 0);
        }
      }
      return true;
    } catch (FrameException e) {
      assertThat(e.getMessage()).as("seed " + seed).matches("(?s)\\S+ [^\\n]*\\.");
      return false;
    } catch (RuntimeException | Error e) {
      throw new AssertionError("seed " + seed, e);
    }
  }

  private static TiffFile tiff(int bits) {
    return new TiffFile(50, 70, 3, bits, (x, y, c) -> x * 31 + y * 7 + c & 255);
  }

  @Test
  void deflatedStrips() {
    sweep("a.tif", tiff(16).compression(8).predictor(2).strips(8).bytes());
  }

  @Test
  void lzwTiles() {
    sweep("b.tif", tiff(8).compression(5).predictor(2).tiles(16, 16).bytes());
  }

  @Test
  void sortedFloatPlanes() {
    TiffFile file =
        new TiffFile(50, 70, 3, 32, (x, y, c) -> Float.floatToRawIntBits(x + y * 0.1f + c));
    sweep(
        "f.tif", file.shorts(339, 3, 3, 3).compression(5).predictor(3).planar().strips(20).bytes());
  }

  @Test
  void packedBits() {
    sweep("p.tif", tiff(12).compression(32773).tiles(32, 16).bytes());
  }

  @Test
  void inksWithTables() {
    byte[] profile = ProfileOfTables.of("CMYK");
    TiffFile file = new TiffFile(50, 70, 4, 8, (x, y, c) -> x * 3 + y + c & 255).shorts(262, 5);
    sweep("k.tif", file.compression(8).raw(34675, 7, profile.length, profile).bytes());
  }

  @Test
  void paletteWithAlpha() {
    int[] map = new int[48];
    Arrays.setAll(map, i -> i * 1000);
    TiffFile file = new TiffFile(50, 70, 2, 4, (x, y, c) -> x + y + c & 15);
    sweep("q.tif", file.shorts(262, 3).shorts(320, map).shorts(338, 2).compression(5).bytes());
  }

  @Test
  void labUnderAlpha() {
    TiffFile file = new TiffFile(50, 70, 4, 16, (x, y, c) -> x * 900 + y * 70 + c & 0xffff);
    sweep("l.tif", file.shorts(262, 9).shorts(338, 2).compression(8).predictor(2).bytes());
  }

  @Test
  void deepWholeNumbers() {
    TiffFile file = new TiffFile(50, 70, 3, 32, (x, y, c) -> x * 31_000_000 + y);
    sweep("w.tif", file.compression(5).predictor(2).strips(9).bytes());
  }

  @Test
  void halfFloatsInPlanes() {
    TiffFile file = new TiffFile(50, 70, 4, 16, (x, y, c) -> x * 77 + y);
    file.shorts(339, 3, 3, 3, 3).shorts(338, 1).compression(8).predictor(3);
    sweep("h.tif", file.planar().strips(40).bytes());
  }

  /** What only the general-purpose reader takes. */
  @Test
  void faxAndJpegInStrips() throws IOException {
    TiffFile fax = new TiffFile(50, 70, 1, 1, (x, y, c) -> x + y & 1);
    sweep("x.tif", fax.shorts(262, 0).shorts(259, 4).bytes());
    byte[] strip = jpegOf(50, 70);
    TiffFile file = new TiffFile(50, 70, 3, 8, (x, y, c) -> 0);
    sweep("y.tif", file.shorts(262, 6).shorts(259, 7).damage(block -> strip).bytes());
  }

  @Test
  void jpegOfFourInks() {
    byte[] profile = ProfileOfTables.of("CMYK");
    sweep(
        "k.jpg",
        JpegBytes.raw(50, 70, 4, (x, y, c) -> x * 3 + y + c & 255)
            .adobe(2)
            .profile(1, 1, profile)
            .bytes());
  }

  @Test
  void plainStrips() {
    sweep("c.tif", tiff(16).strips(3).shorts(274, 6).bytes());
  }

  @Test
  void aBigTiff() {
    sweep("d.tif", tiff(8).big().compression(8).bytes());
  }

  @Test
  void packbitsStrips() {
    sweep("e.tif", tiff(8).compression(32773).strips(20).bytes());
  }

  @Test
  void png() {
    sweep(
        "f.png",
        new PngFile(50, 70, 6, 16, (x, y, c) -> x * 31 + y * 7 + c)
            .chunk("gAMA", PngFile.ints(45455))
            .chunk("iCCP", PngFile.profile(PlainProfile.grey(2)))
            .bytes());
  }

  @Test
  void jpeg() throws IOException {
    sweep("g.jpg", jpegOf(50, 70));
  }

  private static byte[] jpegOf(int width, int height) throws IOException {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int i = 0; i < width * height; i++) {
      image.setRGB(i % width, i / width, i * 12345);
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "jpeg", out);
    return out.toByteArray();
  }
}
