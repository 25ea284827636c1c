package org.duskply.engine.deliver;

import java.nio.file.Path;
import org.duskply.engine.colour.ColourSpace;
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
 * @param width in pixels
 * @param height in pixels
 * @param bandRows rows of a band; band k holds rows k·bandRows up to (k + 1)·bandRows or the end
 * @param working colour space of the linear values that come in
 * @param dotsPerInch print resolution that the file names, 1 to 65535; it changes no pixel
 * @param software what the file says made it
 */
public record SinkSpec(
    Path target,
    Format format,
    int depth,
    NamedSpace profile,
    Compress compress,
    double quality,
    int width,
    int height,
    int bandRows,
    ColourSpace working,
    int dotsPerInch,
    String software) {
  /** Print resolution of files that ask for none: 300 dots an inch, common practice, no source. */
  public static final int DOTS_PER_INCH = 300;

  /** What files say made them; without a version, so that the same pixels are the same file. */
  public static final String SOFTWARE = "Duskply";

  public SinkSpec {
    require(depth == 8 || (depth == 16 && format != Format.JPEG), "depth " + depth);
    require(quality >= 0 && quality <= 1, "quality " + quality);
    require(width > 0 && height > 0, "size " + width + " × " + height);
    require(bandRows > 0, "rows of a band " + bandRows);
    require(dotsPerInch > 0 && dotsPerInch <= 0xFFFF, "resolution " + dotsPerInch);
  }

  private static void require(boolean holds, String what) {
    if (!holds) {
      throw new IllegalArgumentException(what);
    }
  }

  /** Where the rows lie. */
  BandLayout layout() {
    return new BandLayout(width, height, depth, bandRows);
  }
}
