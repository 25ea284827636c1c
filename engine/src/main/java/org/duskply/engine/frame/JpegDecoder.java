package org.duskply.engine.frame;

import java.awt.Rectangle;
import java.awt.image.Raster;
import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.event.IIOReadWarningListener;
import org.duskply.engine.pixel.Region;

/**
 * Decodes a JPEG through the general-purpose reader, as raw components: what turns luma and chroma
 * into RGB here is the definition of JFIF and nothing else.
 *
 * <p>The reader answers a file that is cut short with a full picture and a warning. Here the
 * warnings that mean missing or wrong pixels are failures, with the row that was reached.
 */
final class JpegDecoder implements WholeDecoder {
  private final JpegSegments segments;

  JpegDecoder(JpegSegments segments) {
    this.segments = segments;
  }

  @Override
  public void decode(FrameFile in, Region part, Consumer<Samples> rows, List<String> notices) {
    Region decoded = segments.lossless() ? whole() : part;
    RasterRows raster = new RasterRows(raster(in, decoded, notices), decoded);
    if (raster.bands() != segments.components()) {
      throw in.fail("is a JPEG of a kind that is not read; save it as TIFF");
    }
    boolean luma = segments.luma() || segments.lumaAndBlack();
    int components = segments.components();
    raster.whole(
        (raw, pixels, into) -> {
          if (luma) {
            toRgb(raw, pixels, components, (byte[]) into);
          } else {
            copy(raw, pixels * components, into);
          }
          if (components == 4) {
            toInks((byte[]) into);
          }
        },
        segments.precision() <= 8 ? Samples.Kind.BYTES : Samples.Kind.SHORTS,
        components,
        rows);
  }

  private Region whole() {
    return Region.ofSize(segments.width(), segments.height());
  }

  private Raster raster(FrameFile in, Region part, List<String> notices) {
    RowListener reached = new RowListener();
    int[] firstBad = {-1};
    IIOReadWarningListener listener =
        (reader, warning) -> {
          if (ReaderWarnings.damage(warning)) {
            firstBad[0] = firstBad[0] < 0 ? part.top() + reached.next() : firstBad[0];
          } else if (notices.isEmpty()) {
            notices.add("The JPEG's structure has faults that do not touch its pixels.");
          }
        };
    Raster raster = read(in, part, reached, listener);
    boolean complete = firstBad[0] >= part.bottom() && !segments.progressive();
    if (firstBad[0] >= 0 && !complete && in.tolerant()) {
      int first = Math.min(firstBad[0], segments.height() - 1);
      notices.add(Damage.sentence(first, segments.height() - 1));
    } else if (firstBad[0] >= 0 && !complete) {
      throw in.fail(
          "is cut short or damaged: its rows from "
              + Math.min(firstBad[0], segments.height() - 1)
              + " down are not all there");
    }
    if (raster.getWidth() != part.width() || raster.getHeight() != part.height()) {
      throw twoSizes(in);
    }
    return raster;
  }

  /** The readers stumble over hostile files in their own ways; each becomes the same sentence. */
  private Raster read(
      FrameFile in, Region part, RowListener reached, IIOReadWarningListener listener) {
    ImageReader reader = null;
    try (FileImageInput input = new FileImageInput(in)) {
      reader = ImageReaders.jpeg();
      reader.addIIOReadUpdateListener(reached);
      reader.addIIOReadWarningListener(listener);
      reader.setInput(input, true, true);
      if (part.equals(whole())) {
        return reader.readRaster(0, null);
      }
      if (reader.getWidth(0) != segments.width() || reader.getHeight(0) != segments.height()) {
        throw twoSizes(in);
      }
      ImageReadParam only = reader.getDefaultReadParam();
      only.setSourceRegion(new Rectangle(part.left(), part.top(), part.width(), part.height()));
      return reader.readRaster(0, only);
    } catch (FrameException e) {
      throw e;
    } catch (IOException | RuntimeException e) {
      throw in.fail(
          "is damaged: it cannot be decoded from row "
              + Math.min(part.top() + reached.next(), segments.height() - 1)
              + " down",
          e);
    } finally {
      if (reader != null) {
        reader.dispose();
      }
    }
  }

  private static FrameException twoSizes(FrameFile in) {
    return in.fail("is a damaged JPEG: it says two things about its size");
  }

  private static void copy(int[] raw, int count, Object into) {
    if (into instanceof byte[] bytes) {
      for (int i = 0; i < count; i++) {
        bytes[i] = (byte) raw[i];
      }
    } else {
      short[] shorts = (short[]) into;
      for (int i = 0; i < count; i++) {
        shorts[i] = (short) raw[i];
      }
    }
  }

  /**
   * JFIF 1.02: {@code R = Y + 1.402·Cr, G = Y − 0.344136·Cb − 0.714136·Cr, B = Y + 1.772·Cb}, with
   * 16 fractional bits, rounded to nearest and held to 0…255. A fourth component is black and is
   * copied.
   */
  private static void toRgb(int[] raw, int pixels, int components, byte[] into) {
    for (int i = 0; i < components * pixels; i += components) {
      int luma = raw[i];
      int blue = raw[i + 1] - 128;
      int red = raw[i + 2] - 128;
      into[i] = held(luma + ((91881 * red + 32768) >> 16));
      into[i + 1] = held(luma + ((-22554 * blue - 46802 * red + 32768) >> 16));
      into[i + 2] = held(luma + ((116130 * blue + 32768) >> 16));
      if (components == 4) {
        into[i + 3] = (byte) raw[i + 3];
      }
    }
  }

  /** Turns what was stored, or its RGB, into amounts of ink. */
  private void toInks(byte[] into) {
    boolean rgb = segments.lumaAndBlack();
    boolean turned = segments.turned();
    for (int i = 0; i < into.length; i++) {
      boolean flip = rgb && i % 4 < 3 ? !turned : turned;
      into[i] = flip ? (byte) ~into[i] : into[i];
    }
  }

  private static byte held(int v) {
    return (byte) (v < 0 ? 0 : v > 255 ? 255 : v);
  }
}
