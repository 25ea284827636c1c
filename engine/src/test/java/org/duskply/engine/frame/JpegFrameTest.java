package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** JPEG files written by the JDK; its own conversion to RGB is the oracle of ours. */
class JpegFrameTest {
  private static byte[] jpeg(int type) {
    BufferedImage image = new BufferedImage(83, 150, type);
    for (int y = 0; y < 150; y++) {
      for (int x = 0; x < 83; x++) {
        image.setRGB(x, y, x * 3 << 16 | y << 8 | (x * y & 255));
      }
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "jpeg", out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  private static BufferedImage oracle(byte[] file) {
    try {
      return ImageIO.read(new ByteArrayInputStream(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Nested
  class Colour extends FrameSourceContract {
    private final byte[] file = jpeg(BufferedImage.TYPE_INT_RGB);
    private final BufferedImage read = oracle(file);

    @Override
    FrameSource source() {
      return FrameSources.open(Disk.file("c.jpg", file));
    }

    @Override
    double expected(int x, int y, int channel) {
      return read.getRGB(x, y) >> (16 - 8 * channel) & 255;
    }
  }

  @Nested
  class Grey extends FrameSourceContract {
    private final byte[] file = jpeg(BufferedImage.TYPE_BYTE_GRAY);
    private final BufferedImage read = oracle(file);

    @Override
    FrameSource source() {
      return FrameSources.open(Disk.file("g.jpg", file));
    }

    @Override
    double expected(int x, int y, int channel) {
      return read.getRaster().getSample(x, y, 0);
    }
  }

  @Test
  void aFileThatIsCutShortNamesTheFirstBadRow() {
    byte[] whole = jpeg(BufferedImage.TYPE_INT_RGB);
    FrameSource source =
        FrameSources.open(Disk.file("cut.jpg", Arrays.copyOf(whole, whole.length * 6 / 10)));
    try (FrameReader reader = source.reader()) {
      assertThatThrownBy(() -> reader.read(0))
          .isInstanceOf(FrameException.class)
          .hasMessageMatching(
              "cut\\.jpg is cut short or damaged: its rows from ([4-9][0-9]) down are not all"
                  + " there\\.");
    }
  }

  @Test
  void aBadProfileDoesNotStopThePixels() {
    byte[] whole = jpeg(BufferedImage.TYPE_INT_RGB);
    byte[] piece = new byte[40];
    System.arraycopy(
        new byte[] {(byte) 0xff, (byte) 0xe2, 0, 38, 'I', 'C', 'C', '_'}, 0, piece, 0, 8);
    System.arraycopy(new byte[] {'P', 'R', 'O', 'F', 'I', 'L', 'E', 0, 9, 3}, 0, piece, 8, 10);
    byte[] file = new byte[whole.length + piece.length];
    System.arraycopy(whole, 0, file, 0, 2);
    System.arraycopy(piece, 0, file, 2, piece.length);
    System.arraycopy(whole, 2, file, 2 + piece.length, whole.length - 2);
    FrameSource source = FrameSources.open(Disk.file("icc.jpg", file));
    assertThat(source.info().notices())
        .containsExactly(
            "The pieces of the embedded colour profile do not fit together; it was not used.");
    assertThat(source.reader().read(0).area().height()).isEqualTo(64);
  }
}
