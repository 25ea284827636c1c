package org.duskply.engine.frame;

import java.awt.image.ComponentSampleModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.DataBufferUShort;
import java.awt.image.Raster;
import java.util.function.Consumer;
import org.duskply.engine.pixel.Region;

/**
 * Hands out the raw numbers of a decoded raster as samples, some rows at a time. The raster's
 * colour model is never asked: it is wrong too often.
 */
final class RasterRows {
  /** Turns the raw numbers of some pixels into kept samples. */
  interface Mapping {
    /**
     * Maps one group of pixels.
     *
     * @param raw all bands of {@code pixels} pixels, pixel by pixel
     * @param into the array for the kept samples: {@code byte[]} or {@code short[]}
     */
    void map(int[] raw, int pixels, Object into);
  }

  private final Raster raster;
  private final Region part;
  private final int width;
  private final int height;
  private final int bands;

  /** All of a picture. */
  RasterRows(Raster raster) {
    this(raster, Region.ofSize(raster.getWidth(), raster.getHeight()));
  }

  /**
   * A part of a picture.
   *
   * @param part where the raster lies in the picture
   */
  RasterRows(Raster raster, Region part) {
    this.raster = raster;
    this.part = part;
    this.width = raster.getWidth();
    this.height = raster.getHeight();
    this.bands = raster.getNumBands();
  }

  /** How many bands the raster has. */
  int bands() {
    return bands;
  }

  private int group() {
    return FrameLimits.unitRows(8L * width * bands);
  }

  /** Whole numbers through a mapping. */
  void whole(Mapping mapping, Samples.Kind kind, int channels, Consumer<Samples> rows) {
    int[] raw = new int[group() * width * bands];
    for (int y = 0; y < height; y += group()) {
      int count = Math.min(group(), height - y);
      fetch(y, count, raw);
      Region area = part.rows(part.top() + y, part.top() + y + count);
      int samples = count * width * channels;
      if (kind == Samples.Kind.BYTES) {
        byte[] into = new byte[samples];
        mapping.map(raw, count * width, into);
        rows.accept(Samples.of(area, channels, into));
      } else {
        short[] into = new short[samples];
        mapping.map(raw, count * width, into);
        rows.accept(Samples.of(area, channels, into));
      }
    }
  }

  /**
   * Floats.
   *
   * @param kept which bands
   */
  void floats(int[] kept, Consumer<Samples> rows) {
    int group = group();
    double[] raw = new double[group * width * bands];
    for (int y = 0; y < height; y += group) {
      int count = Math.min(group, height - y);
      raster.getPixels(0, y, width, count, raw);
      float[] into = new float[count * width * kept.length];
      for (int p = 0, o = 0; p < count * width; p++) {
        for (int band : kept) {
          into[o++] = (float) raw[p * bands + band];
        }
      }
      Region area = part.rows(part.top() + y, part.top() + y + count);
      rows.accept(Samples.of(area, kept.length, into));
    }
  }

  private void fetch(int y, int count, int[] raw) {
    DataBuffer data = raster.getDataBuffer();
    boolean plain =
        raster.getSampleModelTranslateX() == 0
            && raster.getSampleModelTranslateY() == 0
            && raster.getSampleModel() instanceof ComponentSampleModel;
    if (plain && (data instanceof DataBufferByte || data instanceof DataBufferUShort)) {
      ComponentSampleModel model = (ComponentSampleModel) raster.getSampleModel();
      for (int band = 0; band < bands; band++) {
        fetch(model, data, band, y, count, raw);
      }
    } else {
      raster.getPixels(0, y, width, count, raw);
    }
  }

  private void fetch(
      ComponentSampleModel model, DataBuffer data, int band, int y, int count, int[] raw) {
    int bank = model.getBankIndices()[band];
    int first = model.getBandOffsets()[band] + data.getOffsets()[bank];
    int step = model.getPixelStride();
    for (int r = 0; r < count; r++) {
      int from = first + (y + r) * model.getScanlineStride();
      int to = r * width * bands + band;
      if (data instanceof DataBufferByte bytes) {
        byte[] in = bytes.getData(bank);
        for (int x = 0, i = from, o = to; x < width; x++, i += step, o += bands) {
          raw[o] = in[i] & 0xff;
        }
      } else {
        short[] in = ((DataBufferUShort) data).getData(bank);
        for (int x = 0, i = from, o = to; x < width; x++, i += step, o += bands) {
          raw[o] = in[i] & 0xffff;
        }
      }
    }
  }
}
