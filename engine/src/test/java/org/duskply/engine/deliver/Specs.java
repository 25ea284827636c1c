package org.duskply.engine.deliver;

import java.nio.file.Path;
import java.util.Locale;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;

/** Specifications that tests change in one thing. */
final class Specs {
  private Specs() {}

  /** A picture into {@code picture.…} of a folder, in bands of 64 rows. */
  static SinkSpec of(Path folder, Format format, Compress compress, TestPicture picture) {
    return new SinkSpec(
        folder.resolve("picture." + format.name().toLowerCase(Locale.ROOT)),
        format,
        picture.depth,
        NamedSpace.SRGB,
        compress,
        0.95,
        false,
        picture.width,
        picture.height,
        64,
        ColourSpace.of(NamedSpace.SRGB),
        SinkSpec.DOTS_PER_INCH,
        Captions.NONE,
        0);
  }

  /** The same with captions. */
  static SinkSpec with(SinkSpec s, Captions captions) {
    return of(s, s.profile(), s.quality(), s.dither(), s.bandRows(), s.dotsPerInch(), captions);
  }

  /** The same in another space. */
  static SinkSpec with(SinkSpec s, NamedSpace to) {
    return of(s, to, s.quality(), s.dither(), s.bandRows(), s.dotsPerInch(), s.captions());
  }

  /** The same at another print resolution. */
  static SinkSpec with(SinkSpec s, int dpi) {
    return of(s, s.profile(), s.quality(), s.dither(), s.bandRows(), dpi, s.captions());
  }

  /** The same in another quality. */
  static SinkSpec quality(SinkSpec s, double to) {
    return of(s, s.profile(), to, s.dither(), s.bandRows(), s.dotsPerInch(), s.captions());
  }

  /** The same with dither, in bands of so many rows. */
  static SinkSpec dithered(SinkSpec s, int rows) {
    return of(s, s.profile(), s.quality(), true, rows, s.dotsPerInch(), s.captions());
  }

  private static SinkSpec of(
      SinkSpec s,
      NamedSpace space,
      double quality,
      boolean dither,
      int bandRows,
      int dotsPerInch,
      Captions captions) {
    return new SinkSpec(
        s.target(),
        s.format(),
        s.depth(),
        space,
        s.compress(),
        quality,
        dither,
        s.width(),
        s.height(),
        bandRows,
        ColourSpace.of(space),
        dotsPerInch,
        captions,
        0);
  }
}
