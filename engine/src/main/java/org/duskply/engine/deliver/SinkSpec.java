package org.duskply.engine.deliver;

import java.nio.file.Path;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;

/**
 * What is to be delivered, and where.
 *
 * @param target the file
 * @param format of the file
 * @param depth bits a sample: 8 or 16; of a JPEG 8
 * @param profile colour space of the file
 * @param compress how a TIFF is packed; other formats do not ask
 * @param quality of a JPEG, 0 to 1; other formats do not ask
 * @param dither whether samples of 8 bits are rounded with blue noise; see {@link Rounding}
 * @param width in pixels
 * @param height in pixels
 * @param bandRows rows of a band; band k holds rows k·bandRows up to (k + 1)·bandRows or the end
 * @param working colour space of the linear values that come in
 * @param dotsPerInch print resolution that the file names, 1 to 65535; it changes no pixel
 * @param captions what the file says in words
 * @param deflateLevel how hard zlib packs a deflated TIFF, 1 to 9; 0: what is quick for its size,
 *     see {@link ChosenPacker}; other formats do not ask
 */
public record SinkSpec(
    Path target,
    Format format,
    int depth,
    NamedSpace profile,
    Compress compress,
    double quality,
    boolean dither,
    int width,
    int height,
    int bandRows,
    ColourSpace working,
    int dotsPerInch,
    Captions captions,
    int deflateLevel) {
  /** Print resolution of files that ask for none: 300 dots an inch, common practice, no source. */
  public static final int DOTS_PER_INCH = 300;

  public SinkSpec {
    require(depth == 8 || (depth == 16 && format != Format.JPEG), "depth " + depth);
    require(!dither || depth == 8, "dither of " + depth + " bits");
    require(quality >= 0 && quality <= 1, "quality " + quality);
    require(width > 0 && height > 0, "size " + width + " × " + height);
    require(bandRows > 0, "rows of a band " + bandRows);
    require(deflateLevel >= 0 && deflateLevel <= 9, "deflate level " + deflateLevel);
    require(dotsPerInch > 0 && dotsPerInch <= 0xFFFF, "resolution " + dotsPerInch);
  }

  private static void require(boolean holds, String what) {
    if (!holds) {
      throw new IllegalArgumentException(what);
    }
  }

  /**
   * Writes all that decides a band's bytes beside its pixels: neither the file's name and words,
   * nor what a JPEG, packed only when it is whole, makes of the bands.
   */
  public void describe(KeyWriter key) {
    key.word(format.name()).number(depth).word(profile.name()).word(compress.name());
    key.number(deflateLevel).number(dither ? 1 : 0);
    key.number(width).number(height).number(bandRows);
    key.word(working.toString());
  }

  /** Where the rows lie. */
  BandLayout layout() {
    return new BandLayout(width, height, depth, bandRows);
  }
}
