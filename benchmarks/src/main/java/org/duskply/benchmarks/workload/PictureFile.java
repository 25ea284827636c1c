package org.duskply.benchmarks.workload;

import java.nio.file.Path;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.deliver.Captions;
import org.duskply.engine.deliver.SinkSpec;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;

/** How the benchmarks write pictures: in sRGB, without words, 16 bits a sample but for JPEGs. */
public final class PictureFile {
  /** Rows that are encoded at once. */
  public static final int BAND_ROWS = 64;

  private static final double JPEG_QUALITY = 0.92;

  private PictureFile() {}

  /** A file of linear sRGB pixels, {@link #BAND_ROWS} at a time. */
  public static SinkSpec spec(
      Path target, Format format, Compress compress, int width, int height) {
    return spec(target, format, compress, 0, width, height);
  }

  /** The same, deflated by zlib as hard as {@code deflateLevel} says if that is not 0. */
  static SinkSpec spec(
      Path target, Format format, Compress compress, int deflateLevel, int width, int height) {
    return new SinkSpec(
        target,
        format,
        format == Format.JPEG ? 8 : 16,
        NamedSpace.SRGB,
        compress,
        JPEG_QUALITY,
        false,
        width,
        height,
        BAND_ROWS,
        ColourSpace.of(NamedSpace.SRGB),
        SinkSpec.DOTS_PER_INCH,
        Captions.NONE,
        deflateLevel);
  }
}
