package org.duskply.engine.deliver;

import java.nio.file.Path;
import org.duskply.engine.colour.IccWriter;

/** Opens {@link Sink}s. */
public final class Sinks {
  private Sinks() {}

  /**
   * Begins a file.
   *
   * @throws DeliverException if no such file can be written, be it for its size or its place
   */
  public static Sink open(SinkSpec spec) {
    return open(spec, SafeFile::open);
  }

  /** What the sink of a specification takes of memory; opens nothing. */
  public static SinkCost cost(SinkSpec spec) {
    Container container = container(spec, spec.layout(), IccWriter.profile(spec.profile()));
    return new SinkCost(container::encodeBytes, container.heldBytes());
  }

  /** How a safe file begins; tests pass one that fails. */
  interface Start {
    SafeFile open(Path target);
  }

  static Sink open(SinkSpec spec, Start start) {
    BandLayout layout = spec.layout();
    if (!layout.fits()) {
      throw new DeliverException(
          spec.target()
              + " cannot be written: a picture "
              + spec.width()
              + " pixels wide is too wide.");
    }
    OutputColour colour = OutputColour.of(spec.working(), spec.profile(), spec.depth());
    Rounding rounding = spec.dither() ? Rounding.DITHERED : Rounding.NEAREST;
    Container container = container(spec, layout, IccWriter.profile(spec.profile()));
    return new FileSink(layout, colour, rounding, container, start.open(spec.target()));
  }

  private static Container container(SinkSpec spec, BandLayout layout, byte[] profile) {
    return switch (spec.format()) {
      case TIFF -> new TiffFile(spec, layout, profile);
      case PNG -> new PngFile(spec, layout, profile);
      case JPEG -> new JpegFile(spec, layout, profile);
    };
  }
}
