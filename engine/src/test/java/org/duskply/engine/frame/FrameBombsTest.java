package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.function.UnaryOperator;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.duskply.engine.testing.JpegBytes;
import org.duskply.engine.testing.PngFile;
import org.duskply.engine.testing.TiffFile;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/** Small files that promise to be work without end: each reads at once, or is refused at once. */
class FrameBombsTest {
  private static final int SUB_DIRECTORIES = 330;

  /** Opens a file and reads it where that takes little memory; its notices. */
  private static FrameInfo read(String name, byte[] bytes) {
    return Assertions.assertTimeoutPreemptively(
        Duration.ofSeconds(20),
        () -> {
          FrameSource source = FrameSources.open(Disk.file(name, bytes));
          try (FrameReader reader = source.reader()) {
            for (int u = 0; u < source.units(); u++) {
              reader.read(u);
            }
          }
          return source.info();
        });
  }

  private static byte[] jpeg(int width, int height, boolean inStages) {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    image.setRGB(width / 2, height / 2, 0xffeedd);
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ImageOutputStream stream = ImageIO.createImageOutputStream(out)) {
      ImageWriteParam how = writer.getDefaultWriteParam();
      how.setProgressiveMode(
          inStages ? ImageWriteParam.MODE_DEFAULT : ImageWriteParam.MODE_DISABLED);
      writer.setOutput(stream);
      writer.write(null, new IIOImage(image, null, null), how);
    } catch (IOException e) {
      throw new AssertionError(e);
    } finally {
      writer.dispose();
    }
    return out.toByteArray();
  }

  /** A TIFF that only the general-purpose reader takes: its strip is a JPEG. */
  private static byte[] tiffOf(byte[] jpeg) {
    return new TiffFile(50, 70, 3, 8, (x, y, c) -> 0)
        .shorts(259, 7)
        .shorts(262, 6)
        .damage(block -> jpeg)
        .bytes();
  }

  /** The file and behind it directories of one entry, each linked from the one before. */
  private static byte[] chain(byte[] file, int links, int tag) {
    ByteBuffer in = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
    int first = in.getInt(4);
    int next = first + 2 + 12 * in.getShort(first);
    int start = file.length + (file.length & 1);
    ByteBuffer out = ByteBuffer.allocate(start + 18 * links).order(ByteOrder.LITTLE_ENDIAN);
    out.put(file).putInt(next, start).position(start);
    for (int i = 1; i <= links; i++) {
      int after = i < links ? start + 18 * i : 0;
      boolean below = tag == SUB_DIRECTORIES && after > 0;
      out.putShort((short) 1).putShort((short) tag).putShort((short) 4).putInt(1);
      out.putInt(below ? after : 7).putInt(below ? 0 : after);
    }
    return out.array();
  }

  @Test
  void directoriesWithoutEndAreNotFollowed() {
    byte[] plain = new TiffFile(50, 70, 3, 8, (x, y, c) -> x + y + c).bytes();
    for (byte[] file : new byte[][] {plain, tiffOf(jpeg(50, 70, false))}) {
      assertThat(read("long.tif", chain(file, 300_000, 256)).notices())
          .anyMatch(n -> n.contains("more than one picture"));
      assertThat(read("deep.tif", chain(file, 100_000, SUB_DIRECTORIES)).width()).isEqualTo(50);
      ByteBuffer ring = ByteBuffer.wrap(chain(file, 1, 256)).order(ByteOrder.LITTLE_ENDIAN);
      ring.putInt(ring.limit() - 4, ring.getInt(4));
      assertThat(read("ring.tif", ring.array()).width()).isEqualTo(50);
    }
  }

  @Test
  void aPaletteOfNoBitsIsNone() {
    for (int compression : new int[] {1, 5, 8, 32773}) {
      byte[] file =
          new TiffFile(50, 70, 1, 8, (x, y, c) -> 0)
              .shorts(262, 3)
              .shorts(258, 0)
              .shorts(320, 1, 2, 3)
              .compression(compression)
              .bytes();
      assertThatThrownBy(() -> read("p.tif", file))
          .isInstanceOf(FrameException.class)
          .hasMessageContaining("a palette in a form that is not read");
    }
  }

  /** The JPEG in a strip says 65,000 × 65,000, which its decoder would go through. */
  @Test
  void aPieceLargerThanItsPlaceIsRefused() {
    byte[] jpeg = jpeg(50, 70, false);
    for (int i = 0; i < jpeg.length - 9; i++) {
      if ((jpeg[i] & 0xff) == 0xff && (jpeg[i + 1] & 0xff) == 0xc0) {
        ByteBuffer.wrap(jpeg).putShort(i + 5, (short) 65_000).putShort(i + 7, (short) 65_000);
        break;
      }
    }
    assertThatThrownBy(() -> read("j.tif", tiffOf(jpeg)))
        .isInstanceOf(FrameException.class)
        .hasMessage(
            "j.tif is damaged: its rows from 0 are in a JPEG of 65000 × 65000 pixels, larger than"
                + " its place.");
  }

  /** Deflated blocks may be empty, and RFC 1951 sets no limit to how many there are. */
  @Test
  void emptyBlocksWithoutEndAreNotRead() {
    byte[] empty = {0, 0, 0, (byte) 0xff, (byte) 0xff}; // stored, of no bytes
    UnaryOperator<byte[]> stuffed =
        packed -> {
          ByteArrayOutputStream out = new ByteArrayOutputStream();
          out.write(packed, 0, 2);
          for (int i = 0; i < 400_000; i++) {
            out.writeBytes(empty);
          }
          out.write(packed, 2, packed.length - 2);
          return out.toByteArray();
        };
    TiffFile plain = new TiffFile(50, 70, 3, 8, (x, y, c) -> x * y + c).strips(70).compression(8);
    assertThat(read("e.tif", plain.bytes()).width()).isEqualTo(50);
    assertThatThrownBy(() -> read("e.tif", plain.damage(stuffed).bytes()))
        .isInstanceOf(FrameException.class)
        .hasMessage("e.tif is damaged: the rows from 0 down cannot be unpacked.");
  }

  /** ITU-T T.81 sets no limit to scans; each goes over all of the picture. */
  @Test
  void scansWithoutEndAreRefused() {
    byte[] file = jpeg(64, 64, true);
    assertThat(read("s.jpg", file).width()).isEqualTo(64);
    int last = file.length;
    while ((file[last - 2] & 0xff) != 0xff || (file[last - 1] & 0xff) != 0xda) {
      last--;
    }
    byte[] scan = Arrays.copyOfRange(file, last - 2, file.length - 2);
    ByteArrayOutputStream many = new ByteArrayOutputStream();
    many.write(file, 0, file.length - 2);
    for (int i = 0; i < 100; i++) {
      many.writeBytes(scan);
    }
    many.write(0xff);
    many.write(0xd9);
    assertThatThrownBy(() -> read("s.jpg", many.toByteArray()))
        .isInstanceOf(FrameException.class)
        .hasMessage("s.jpg is a JPEG in more than 100 scans; save it anew.");
    assertThatThrownBy(() -> read("s.tif", tiffOf(many.toByteArray())))
        .isInstanceOf(FrameException.class)
        .hasMessageContaining("more than 100 scans");
  }

  /** 26,000 × 26,000 pixels would be 2 GB; to say which row is missing takes no picture. */
  @Test
  void aCutPngIsRefusedWithoutRoomForItsPicture() {
    for (int interlaced = 0; interlaced < 2; interlaced++) {
      byte[] rows = TiffFile.deflate(new byte[3 * 78_001]);
      ByteBuffer file = ByteBuffer.allocate(8 + 25 + 8 + rows.length);
      file.put(PngChunks.SIGNATURE).putInt(13).put("IHDR".getBytes(StandardCharsets.US_ASCII));
      file.putInt(26_000).putInt(26_000).put((byte) 8).put((byte) 2).putShort((short) 0);
      file.put((byte) interlaced);
      java.util.zip.CRC32 sum = new java.util.zip.CRC32();
      sum.update(file.array(), 12, 17);
      file.putInt((int) sum.getValue()).putInt(rows.length + 9);
      file.put("IDAT".getBytes(StandardCharsets.US_ASCII)).put(rows);
      int row = interlaced == 1 ? 0 : 3;
      assertThatThrownBy(() -> FrameSources.open(Disk.file("huge.png", file.array())))
          .isInstanceOf(FrameException.class)
          .hasMessage(
              "huge.png is cut short or damaged: it cannot be decoded from row " + row + " down.");
    }
  }

  /** Texts that unpack to a gigabyte; a picture needs none of them. */
  @Test
  void packedTextsAreNotUnpacked() {
    byte[] packed = TiffFile.deflate(new byte[64 << 20]);
    ByteBuffer text = ByteBuffer.allocate(3 + packed.length);
    text.put((byte) 'k').put((byte) 0).put((byte) 0).put(packed);
    PngFile file =
        new PngFile(5, 7, 2, 8, (x, y, c) -> x)
            .chunk("zTXt", text.array())
            .chunk("iCCP", text.array());
    assertThat(read("t.png", file.bytes()).notices())
        .containsExactly("The embedded colour profile is damaged and was not used.");
  }

  /** EXIF is text of strangers: what it calls the camera stays on one line. */
  @Test
  void aCameraIsNamedWithoutControlCharacters() {
    byte[] name = "Box\u001b[31m\n\u0007Two\0".getBytes(StandardCharsets.UTF_8);
    byte[] file = new TiffFile(5, 7, 3, 8, (x, y, c) -> 9).raw(272, 2, name.length, name).bytes();
    assertThat(read("e.tif", file).exif().camera()).isEqualTo("Box [31m  Two");
    assertThat(read("e.jpg", JpegBytes.raw(5, 7, 3, (x, y, c) -> 9).jfif().bytes()).width())
        .isEqualTo(5);
  }
}
