package org.duskply.engine.frame;

import java.awt.image.DataBuffer;
import java.awt.image.Raster;
import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;
import javax.imageio.ImageReader;
import javax.imageio.event.IIOReadWarningListener;
import org.duskply.engine.pixel.Region;

/**
 * Decodes the TIFF pictures that our own reader does not take (JPEG, fax, LZW of the older form)
 * through the general-purpose reader, as raw samples. What they mean was read from the tags; the
 * raster must agree with them or the file is refused. That reader is shown a {@link TiffExcerpt},
 * so that nothing else in the file can lead it astray.
 */
final class TiffRasterDecoder implements WholeDecoder {
  private final TiffPicture picture;
  private final TiffKind kind;
  private final TiffExcerpt excerpt;
  private final int[] kept;

  /** What turns white-is-zero round in the first sample kept; 0 where black is. */
  private final int turned;

  TiffRasterDecoder(TiffPicture picture, TiffKind kind, TiffExcerpt excerpt) {
    this.picture = picture;
    this.kind = kind;
    this.excerpt = excerpt;
    this.kept = new int[picture.channels()];
    this.turned = picture.photometric() == TiffPicture.MIN_IS_WHITE ? (int) kind.fullScale() : 0;
    for (int c = 0; c < kept.length; c++) {
      kept[c] = c < picture.colours() ? c : picture.alphaAt();
    }
  }

  @Override
  public void decode(FrameFile in, Region part, Consumer<Samples> rows, List<String> notices) {
    Raster raster = raster(in);
    boolean floats = raster.getTransferType() >= DataBuffer.TYPE_FLOAT;
    if (raster.getWidth() != picture.width()
        || raster.getHeight() != picture.height()
        || raster.getNumBands() != picture.stored()
        || floats != (kind.samples() == Samples.Kind.FLOATS)) {
      throw in.fail("stores its samples in a way that is not read; save it as plain RGB TIFF");
    }
    RasterRows out = new RasterRows(raster);
    if (floats) {
      out.floats(kept, rows);
    } else {
      out.whole(mapping(in, raster.getNumBands()), kind.samples(), kind.channels(), rows);
    }
  }

  private Raster raster(FrameFile in) {
    boolean[] damaged = {false};
    IIOReadWarningListener listener =
        (reader, warning) -> damaged[0] |= ReaderWarnings.damage(warning);
    ImageReader reader = null;
    try (FileImageInput input = new FileImageInput(excerpt.of(in))) {
      reader = ImageReaders.tiff();
      reader.addIIOReadWarningListener(listener);
      reader.setInput(input, true, true);
      Raster raster = reader.readRaster(0, null);
      if (damaged[0]) {
        throw in.fail("is cut short or damaged: some of its rows are not all there");
      }
      return raster;
    } catch (FrameException e) {
      throw e;
    } catch (IOException | RuntimeException e) {
      throw in.fail("is damaged, or a TIFF of a kind that is not read", e);
    } finally {
      if (reader != null) {
        reader.dispose();
      }
    }
  }

  private RasterRows.Mapping mapping(FrameFile in, int bands) {
    if (kind.palette().length > 0) {
      return (raw, pixels, into) -> expand(in, raw, bands, pixels, (short[]) into);
    }
    if (picture.bits() > 16) {
      return (raw, pixels, into) -> round(raw, bands, pixels, (short[]) into);
    }
    return kind.samples() == Samples.Kind.BYTES
        ? (raw, pixels, into) -> bytes(in, raw, bands, pixels, (byte[]) into)
        : (raw, pixels, into) -> shorts(in, raw, bands, pixels, (short[]) into);
  }

  private void bytes(FrameFile in, int[] raw, int bands, int pixels, byte[] into) {
    int most = (1 << picture.bits()) - 1;
    int seen = 0;
    for (int p = 0, o = 0; p < pixels; p++) {
      for (int band : kept) {
        int v = raw[p * bands + band];
        seen |= v;
        into[o++] = (byte) v;
      }
      into[o - kept.length] ^= (byte) turned;
    }
    checkDepth(in, seen, most);
  }

  private void shorts(FrameFile in, int[] raw, int bands, int pixels, short[] into) {
    int most = (1 << picture.bits()) - 1;
    int seen = 0;
    for (int p = 0, o = 0; p < pixels; p++) {
      for (int band : kept) {
        int v = raw[p * bands + band];
        seen |= v;
        into[o++] = (short) v;
      }
      into[o - kept.length] ^= (short) turned;
    }
    checkDepth(in, seen, most);
  }

  private static void checkDepth(FrameFile in, int seen, int most) {
    if ((seen & ~most) != 0) {
      throw in.fail("holds samples that are greater than their bits allow (tag 258)");
    }
  }

  /** {@code v/(2^bits − 1)} in 65,535ths, to nearest. */
  private void round(int[] raw, int bands, int pixels, short[] into) {
    long most = (1L << picture.bits()) - 1;
    for (int p = 0, o = 0; p < pixels; p++) {
      for (int band : kept) {
        long v = raw[p * bands + band] & most;
        into[o++] = (short) ((v * 65535 + most / 2) / most);
      }
      into[o - kept.length] ^= (short) turned;
    }
  }

  private void expand(FrameFile in, int[] raw, int bands, int pixels, short[] into) {
    long[] palette = kind.palette();
    int entries = palette.length / 3;
    for (int p = 0, o = 0; p < pixels; p++) {
      int index = raw[p * bands];
      if (index >= entries) {
        throw in.fail("is damaged: a pixel has a colour that is not in its palette");
      }
      for (int c = 0; c < 3; c++) {
        into[o++] = (short) palette[c * entries + index];
      }
    }
  }
}
