package org.duskply.engine.frame;

import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import org.duskply.engine.pixel.Region;
import org.jspecify.annotations.Nullable;

/**
 * Decodes a PNG through the JDK's reader, as raw samples. Palette and transparent colour are
 * applied here, since the reader applies them at some depths and not at others.
 */
final class PngDecoder implements WholeDecoder {
  private final PngChunks chunks;
  private final int channels;

  PngDecoder(PngChunks chunks, int channels) {
    this.chunks = chunks;
    this.channels = channels;
  }

  @Override
  public void decode(FrameFile in, Region part, Consumer<Samples> rows, List<String> notices) {
    Raster whole = raster(in, notices);
    if (!chunks.cut() && !PngChunks.pixelsSound(in)) {
      if (!in.tolerant()) {
        throw in.fail("is damaged: the data of its pixels does not match its checksums");
      }
      notices.add("The data of its pixels does not match its checksums; some may be wrong.");
    }
    RasterRows raster = new RasterRows(whole);
    int bands = raster.bands();
    int step = step(whole);
    int need = chunks.palette() ? 1 : (chunks.colour() ? 3 : 1) + (chunks.storedAlpha() ? 1 : 0);
    if (bands < need) {
      throw in.fail("is a PNG of a kind that is not read; save it as TIFF");
    }
    boolean shorts = chunks.bits() == 16;
    int[] table = chunks.palette() ? palette() : new int[0];
    int[] key = chunks.transparency() ? key() : null;
    raster.whole(
        (raw, pixels, into) -> {
          if (chunks.palette()) {
            expand(raw, bands, pixels, table, (byte[]) into);
          } else if (shorts) {
            copy(raw, bands, pixels, key, (short[]) into);
          } else {
            copy(raw, bands, pixels, step, key, (byte[]) into);
          }
        },
        shorts ? Samples.Kind.SHORTS : Samples.Kind.BYTES,
        channels,
        rows);
  }

  private Raster raster(FrameFile in, List<String> notices) {
    RowListener reached = new RowListener();
    ImageReader reader = null;
    BufferedImage image = null;
    try (FileImageInput input = new FileImageInput(in)) {
      reader = ImageReaders.png();
      reader.addIIOReadUpdateListener(reached);
      reader.setInput(input, true, true);
      image = reader.getImageTypes(0).next().createBufferedImage(chunks.width(), chunks.height());
      ImageReadParam into = reader.getDefaultReadParam();
      into.setDestination(image);
      return reader.read(0, into).getRaster();
    } catch (FrameException e) {
      throw e;
    } catch (IOException | RuntimeException e) {
      int bad = chunks.interlaced() ? 0 : Math.min(reached.next(), chunks.height() - 1);
      if (!in.tolerant() || image == null) {
        throw in.fail("is cut short or damaged: it cannot be decoded from row " + bad + " down", e);
      }
      notices.add(Damage.sentence(bad, chunks.height() - 1));
      return greyed(image.getRaster(), bad);
    } finally {
      if (reader != null) {
        reader.dispose();
      }
    }
  }

  /** Puts grey in place of the rows from {@code bad} down; passes leave what they brought. */
  private WritableRaster greyed(WritableRaster raster, int bad) {
    if (chunks.palette() || chunks.interlaced()) {
      return raster;
    }
    int full = (1 << chunks.bits()) - 1;
    int[] row = new int[raster.getWidth()];
    for (int band = 0; band < raster.getNumBands(); band++) {
      boolean alpha = band == raster.getNumBands() - 1 && raster.getNumBands() % 2 == 0;
      Arrays.fill(row, alpha ? full : full / 2);
      for (int y = bad; y < raster.getHeight(); y++) {
        raster.setSamples(0, y, row.length, 1, band, row);
      }
    }
    return raster;
  }

  /** The reader stretches low depths to 8 bits where one grey is transparent: by how much. */
  private int step(Raster raster) {
    boolean stretched =
        !chunks.palette()
            && chunks.bits() < 8
            && raster.getSampleModel().getSampleSize(0) > chunks.bits();
    return stretched ? 255 / ((1 << chunks.bits()) - 1) : 1;
  }

  /** Red, green, blue and alpha of each of 256 entries; those that are missing are black. */
  private int[] palette() {
    int[] table = new int[4 * 256];
    byte[] colours = chunks.chunk("PLTE", 0);
    byte[] alphas = chunks.chunk("tRNS", 0);
    for (int e = 0; e < 256; e++) {
      for (int c = 0; c < 3; c++) {
        int at = 3 * e + c;
        table[4 * e + c] = colours != null && at < colours.length ? colours[at] & 0xff : 0;
      }
      table[4 * e + 3] = alphas != null && e < alphas.length ? alphas[e] & 0xff : 255;
    }
    return table;
  }

  /** The transparent colour, at the depth of the samples. */
  private int @Nullable [] key() {
    int colours = chunks.colour() ? 3 : 1;
    byte[] bytes = chunks.chunk("tRNS", 2 * colours);
    if (bytes == null || chunks.palette()) {
      return null;
    }
    int[] key = new int[colours];
    for (int c = 0; c < colours; c++) {
      int stored = ((bytes[2 * c] & 0xff) << 8) | (bytes[2 * c + 1] & 0xff);
      key[c] = stored & ((1 << chunks.bits()) - 1);
    }
    return key;
  }

  private void expand(int[] raw, int bands, int pixels, int[] table, byte[] into) {
    for (int p = 0, o = 0; p < pixels; p++) {
      int entry = 4 * (raw[p * bands] & 0xff);
      for (int c = 0; c < channels; c++) {
        into[o++] = (byte) table[entry + c];
      }
    }
  }

  private void copy(int[] raw, int bands, int pixels, int step, int @Nullable [] key, byte[] into) {
    int copied = chunks.transparency() ? channels - 1 : channels;
    for (int p = 0, o = 0; p < pixels; p++) {
      int i = p * bands;
      for (int c = 0; c < copied; c++) {
        raw[i + c] /= step;
        into[o++] = (byte) raw[i + c];
      }
      if (copied < channels) {
        into[o++] = (byte) (hits(raw, i, key) ? 0 : (1 << chunks.bits()) - 1);
      }
    }
  }

  private void copy(int[] raw, int bands, int pixels, int @Nullable [] key, short[] into) {
    int copied = chunks.transparency() ? channels - 1 : channels;
    for (int p = 0, o = 0; p < pixels; p++) {
      int i = p * bands;
      for (int c = 0; c < copied; c++) {
        into[o++] = (short) raw[i + c];
      }
      if (copied < channels) {
        into[o++] = (short) (hits(raw, i, key) ? 0 : 65535);
      }
    }
  }

  private static boolean hits(int[] raw, int at, int @Nullable [] key) {
    if (key == null) {
      return false;
    }
    for (int c = 0; c < key.length; c++) {
      if (raw[at + c] != key[c]) {
        return false;
      }
    }
    return true;
  }
}
