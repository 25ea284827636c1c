package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.duskply.engine.testing.PngFile;
import org.duskply.engine.testing.TiffFile;
import org.junit.jupiter.api.Test;

/** Each way a frame can be bad, and the one sentence that it is answered with. */
class BadFrameTest {
  private static TiffFile tiff() {
    return new TiffFile(40, 30, 3, 16, (x, y, c) -> x * 900 + y * 31 + c).strips(10);
  }

  /** Opens a file of these bytes and reads every unit. */
  private static void read(Path file) {
    FrameSource source = FrameSources.open(file);
    try (FrameReader reader = source.reader()) {
      for (int u = 0; u < source.units(); u++) {
        reader.read(u);
      }
    }
  }

  private static void refused(byte[] bytes, String sentence) {
    Path file = Disk.file("bad.tif", bytes);
    assertThatThrownBy(() -> read(file))
        .isInstanceOf(FrameException.class)
        .hasMessage("bad.tif " + sentence);
  }

  @Test
  void missing() {
    assertThatThrownBy(() -> FrameSources.open(Disk.missing("late-sky.tif")))
        .isInstanceOf(FrameException.class)
        .hasMessage("late-sky.tif is not there.");
  }

  @Test
  void aFolder() {
    assertThatThrownBy(() -> FrameSources.open(Disk.missing(".").toAbsolutePath().getParent()))
        .isInstanceOf(FrameException.class)
        .hasMessageContaining("is a folder, not a picture.");
  }

  @Test
  void zeroBytes() {
    refused(new byte[0], "is empty: it holds 0 bytes.");
  }

  @Test
  void notAPicture() {
    refused(
        "dear diary".getBytes(StandardCharsets.US_ASCII),
        "is not a picture of a kind that is read: TIFF, PNG and JPEG are.");
    refused(new byte[] {'I'}, "is not a picture of a kind that is read: TIFF, PNG and JPEG are.");
  }

  @Test
  void aKindThatIsNotRead() {
    refused(
        "8BPS\0\1        ".getBytes(StandardCharsets.US_ASCII),
        "is a layered document, which is not read; TIFF, PNG and JPEG are.");
  }

  @Test
  void aWrongEndingDoesNotMatter() {
    byte[] png = new PngFile(3, 2, 2, 8, (x, y, c) -> x + y + c).bytes();
    assertThat(FrameSources.open(Disk.file("really-a-png.tif", png)).info().width()).isEqualTo(3);
    assertThat(FrameSources.open(Disk.file("really-a-tiff.jpg", tiff().bytes())).info().width())
        .isEqualTo(40);
  }

  @Test
  void tiffCutInItsPixels() {
    byte[] whole = tiff().bytes();
    byte[] cut = Arrays.copyOf(whole, 500);
    refused(cut, "is damaged: a directory of tags lies behind the file's end.");
  }

  @Test
  void stripBehindTheEnd() {
    refused(
        tiff().longs(273, 16, 3000, 900_000).bytes(),
        "is cut short: the rows from 20 down are not all there.");
  }

  @Test
  void stripsThatShareBytes() {
    refused(
        tiff().longs(273, 16, 2000, 4816).bytes(),
        "is damaged: the rows from 0 and those from 10 share the same bytes.");
  }

  @Test
  void byteCountsThatLie() {
    refused(
        tiff().longs(279, 2400, 17, 2400).bytes(),
        "is damaged: it says that 17 bytes hold the rows from 10, which need 2400.");
  }

  @Test
  void aStripThatUnpacksToTooLittle() {
    byte[] little = TiffFile.deflate(new byte[240 * 4]);
    refused(
        tiff().compression(8).damage(b -> little).bytes(),
        "is damaged: the rows from 4 down cannot be unpacked.");
  }

  @Test
  void anLzwStripThatUnpacksToTooLittle() {
    byte[] little = TiffFile.lzw(new byte[240 * 4]);
    refused(
        tiff().compression(5).damage(b -> little).bytes(),
        "is damaged: the rows from 4 down cannot be unpacked.");
  }

  /** 200 MB of zeros in 200 kB: no more of it is unpacked than one byte too many. */
  @Test
  void aStripThatUnpacksToFarTooMuch() {
    byte[] bomb = TiffFile.deflate(new byte[50 << 20]);
    refused(
        new TiffFile(40, 10, 3, 16, (x, y, c) -> 0).compression(8).damage(b -> bomb).bytes(),
        "is damaged: the rows from 0 unpack to more than there is room for.");
  }

  @Test
  void aStripWhoseDataIsSpoilt() {
    byte[] plain = new byte[2400];
    new Random(5).nextBytes(plain);
    byte[] packed = TiffFile.deflate(plain);
    packed[1800] ^= 0x55;
    packed[1801] ^= 0x55;
    Path file = Disk.file("spoilt.tif", tiff().compression(8).damage(b -> packed).bytes());
    assertThatThrownBy(() -> read(file))
        .isInstanceOf(FrameException.class)
        .hasMessage("spoilt.tif is damaged: the rows from 0 down do not match their checksum.");
  }

  @Test
  void noStrips() {
    refused(tiff().without(273).bytes(), "is damaged: it lists 0 of the 3 pieces it is cut into.");
  }

  @Test
  void tooLarge() {
    refused(
        tiff().longs(256, 3_000_000).bytes(),
        "is 3000000 × 30 pixels; the longest side taken is 300000.");
    refused(
        tiff().longs(256, 100_000).longs(257, 100_000).bytes(),
        "is 100000 × 100000 pixels; the most taken is 1000000000 pixels.");
    refused(tiff().longs(257, 0).bytes(), "says it is 40 × 0 pixels, which is no picture.");
  }

  @Test
  void aTagThatClaimsTooMuch() {
    refused(
        tiff().raw(273, 4, 0x7fffffff, new byte[8]).bytes(),
        "is damaged: its tag 273 claims 2147483647 values.");
  }

  @Test
  void tilesThatAreTooLarge() {
    refused(
        tiff().longs(322, 1 << 30).longs(323, 16).longs(324, 16).longs(325, 10).bytes(),
        "is damaged: its tiles have a side of 1073741824 (tag 322).");
  }

  @Test
  void coloursThatAreNotRead() {
    refused(
        tiff().shorts(262, 5).bytes(), "says it has 3 samples a pixel (tag 277) where 4 are due.");
    refused(
        tiff().shorts(262, 5).shorts(332, 2).bytes(),
        "holds inks other than CMYK (tag 262, PhotometricInterpretation), which this version does"
            + " not read; save it as RGB.");
    refused(
        tiff().shorts(339, 2, 2, 2).bytes(),
        "holds signed or complex samples (tag 339, SampleFormat 2), which are not read; save it"
            + " with unsigned ones.");
    refused(
        tiff().shorts(259, 50_000 - 65_536).bytes(),
        "is compressed in a way that is not read (tag 259, Compression 50000); save it with none,"
            + " LZW or deflate.");
  }

  @Test
  void aRawFile() {
    refused(
        tiff().raw(50706, 1, 4, new byte[] {1, 4, 0, 0}).bytes(),
        "is a camera's raw file; develop it to a 16-bit TIFF first.");
  }

  @Test
  void pngCutShort() {
    byte[] whole = new PngFile(60, 50, 2, 8, (x, y, c) -> x * y * 37 + c & 255).bytes();
    refused(
        Arrays.copyOf(whole, whole.length * 9 / 10),
        "is cut short or damaged: it cannot be decoded from row 44 down.");
  }

  /** Each chunk ends in its checksum (PNG, third edition, 5.3). */
  @Test
  void pngWhoseChecksumsDoNotMatch() {
    byte[] header = new PngFile(6, 5, 2, 8, (x, y, c) -> x * y).bytes();
    header[29] ^= 1;
    refused(header, "is a damaged PNG: its chunk IHDR does not match its checksum.");
    byte[] data = new PngFile(6, 5, 2, 8, (x, y, c) -> x * y).bytes();
    data[data.length - 13] ^= 1;
    refused(data, "is damaged: the data of its pixels does not match its checksums.");
  }

  @Test
  void pngWhosePixelsAreSpoilt() {
    byte[] whole = new PngFile(60, 50, 2, 8, (x, y, c) -> x * y * 37 + c & 255).bytes();
    Arrays.fill(whole, whole.length / 2, whole.length / 2 + 40, (byte) 0xff);
    Path file = Disk.file("spoilt.png", whole);
    assertThatThrownBy(() -> read(file))
        .isInstanceOf(FrameException.class)
        .hasMessageMatching(
            "spoilt\\.png is cut short or damaged: it cannot be decoded from row [0-9]+ down\\.");
  }

  @Test
  void onePixel() {
    FrameSource one =
        FrameSources.open(
            Disk.file("one.tif", new TiffFile(1, 1, 3, 16, (x, y, c) -> 7 + c).bytes()));
    assertThat(one.units()).isEqualTo(1);
    assertThat(one.reader().read(0).shorts()).containsExactly((short) 7, (short) 8, (short) 9);
  }

  @Test
  void aVeryLongRow() {
    TiffFile file = new TiffFile(30_000, 2, 3, 16, (x, y, c) -> x + y + c).compression(8);
    FrameSource source = FrameSources.open(Disk.file("long.tif", file.predictor(2).bytes()));
    Samples samples = source.reader().read(0);
    assertThat(SamplesText.value(samples, 29_999, 1, 2)).isEqualTo(30_002);
  }

  @Test
  void aStripWithRowsToSpareIsTaken() {
    TiffFile file = new TiffFile(40, 25, 3, 16, (x, y, c) -> x + y + c).strips(10);
    read(Disk.file("full.tif", file.compression(8).fullLastStrip().bytes()));
  }
}
