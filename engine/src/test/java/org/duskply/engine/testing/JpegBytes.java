package org.duskply.engine.testing;

import java.awt.image.DataBuffer;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/**
 * JPEG files for tests: the scans come from the JDK's encoder as raw components, the segments about
 * them (ITU-T T.81, annex B) are put in byte by byte.
 */
public final class JpegBytes {
  private final ByteArrayOutputStream segments = new ByteArrayOutputStream();
  private final byte[] scan;

  private JpegBytes(byte[] scan) {
    this.scan = scan;
  }

  /** Components as they are, without a word on what they mean, at the highest quality. */
  public static JpegBytes raw(int width, int height, int components, TiffFile.Picture picture) {
    WritableRaster raster =
        Raster.createInterleavedRaster(DataBuffer.TYPE_BYTE, width, height, components, null);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        for (int c = 0; c < components; c++) {
          raster.setSample(x, y, c, picture.sample(x, y, c));
        }
      }
    }
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ImageOutputStream stream = ImageIO.createImageOutputStream(out)) {
      ImageWriteParam best = writer.getDefaultWriteParam();
      best.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      best.setCompressionQuality(1);
      writer.setOutput(stream);
      writer.write(null, new IIOImage(raster, null, null), best);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    byte[] whole = out.toByteArray();
    return new JpegBytes(Arrays.copyOfRange(whole, 2, whole.length));
  }

  /** Adds a segment behind the file's first two bytes and what was added before. */
  public JpegBytes segment(int marker, byte[] payload) {
    segments.write(0xff);
    segments.write(marker);
    segments.write(payload.length + 2 >> 8);
    segments.write(payload.length + 2);
    segments.writeBytes(payload);
    return this;
  }

  /** The APP14 marker: transform 0 none, 1 luma and chroma, 2 luma, chroma and black. */
  public JpegBytes adobe(int transform) {
    byte[] payload = Arrays.copyOf("Adobe".getBytes(StandardCharsets.US_ASCII), 12);
    payload[6] = 100;
    payload[11] = (byte) transform;
    return segment(0xee, payload);
  }

  /** JFIF's marker, which says that three components are luma and chroma. */
  public JpegBytes jfif() {
    return segment(0xe0, new byte[] {'J', 'F', 'I', 'F', 0, 1, 2, 0, 0, 1, 0, 1, 0, 0});
  }

  /** A piece of a profile: {@code number} of {@code count} (ICC.1:2010, annex B.4). */
  public JpegBytes profile(int number, int count, byte[] piece) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes("ICC_PROFILE\0".getBytes(StandardCharsets.US_ASCII));
    out.write(number);
    out.write(count);
    out.writeBytes(piece);
    return segment(0xe2, out.toByteArray());
  }

  /** The camera's record, from its byte order on. */
  public JpegBytes exif(byte[] record) {
    byte[] payload = new byte[6 + record.length];
    System.arraycopy("Exif\0\0".getBytes(StandardCharsets.US_ASCII), 0, payload, 0, 6);
    System.arraycopy(record, 0, payload, 6, record.length);
    return segment(0xe1, payload);
  }

  /** The file. */
  public byte[] bytes() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(0xff);
    out.write(0xd8);
    out.writeBytes(segments.toByteArray());
    out.writeBytes(scan);
    return out.toByteArray();
  }
}
