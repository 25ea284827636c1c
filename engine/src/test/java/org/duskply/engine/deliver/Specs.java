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
        Captions.NONE);
  }

  /** The same with captions. */
  static SinkSpec with(SinkSpec s, Captions captions) {
    return of(s, s.profile(), s.quality(), s.dither(), s.dotsPerInch(), captions);
  }

  /** The same in another space. */
  static SinkSpec with(SinkSpec s, NamedSpace space) {
    return of(s, space, s.quality(), s.dither(), s.dotsPerInch(), s.captions());
  }

  /** The same at another print resolution. */
  static SinkSpec with(SinkSpec s, int dotsPerInch) {
    return of(s, s.profile(), s.quality(), s.dither(), dotsPerInch, s.captions());
  }

  /** The same in another quality. */
  static SinkSpec quality(SinkSpec s, double quality) {
    return of(s, s.profile(), quality, s.dither(), s.dotsPerInch(), s.captions());
  }

  /** The same with dither. */
  static SinkSpec dithered(SinkSpec s) {
    return of(s, s.profile(), s.quality(), true, s.dotsPerInch(), s.captions());
  }

  private static SinkSpec of(
      SinkSpec s,
      NamedSpace space,
      double quality,
      boolean dither,
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
        s.bandRows(),
        ColourSpace.of(space),
        dotsPerInch,
        captions);
  }
}
