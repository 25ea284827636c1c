package org.duskply.engine.deliver;

import java.nio.file.Path;
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
        folder.resolve("picture." + format.name().toLowerCase(java.util.Locale.ROOT)),
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
    return of(s, s.profile(), s.dotsPerInch(), captions);
  }

  /** The same in another space. */
  static SinkSpec with(SinkSpec s, NamedSpace space) {
    return of(s, space, s.dotsPerInch(), s.captions());
  }

  /** The same at another print resolution. */
  static SinkSpec with(SinkSpec s, int dotsPerInch) {
    return of(s, s.profile(), dotsPerInch, s.captions());
  }

  private static SinkSpec of(SinkSpec s, NamedSpace space, int dotsPerInch, Captions captions) {
    return new SinkSpec(
        s.target(),
        s.format(),
        s.depth(),
        space,
        s.compress(),
        s.quality(),
        s.dither(),
        s.width(),
        s.height(),
        s.bandRows(),
        ColourSpace.of(space),
        dotsPerInch,
        captions);
  }
}
