package org.duskply.benchmarks.kernels;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.deliver.Captions;
import org.duskply.engine.deliver.Sink;
import org.duskply.engine.deliver.SinkSpec;
import org.duskply.engine.deliver.Sinks;
import org.duskply.engine.pixel.Encoded;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Format;

/** A picture whose every sample is a code of a file of some depth, and the files of it. */
final class CodedPicture {
  static final int WIDTH = 512;
  static final int HEIGHT = 512;
  static final int PIXELS = WIDTH * HEIGHT;

  private static final int BAND_ROWS = 64;
  private static final double QUALITY = 0.95;

  private final int depth;
  private final float[][] encoded = Content.VIEW.picture(PIXELS, 0);
  private final float[] linear;

  CodedPicture(int depth) {
    this.depth = depth;
    this.linear = new float[full() + 1];
    for (int code = 0; code <= full(); code++) {
      linear[code] = (float) Encoded.decodeExactly((double) code / full());
    }
  }

  /** The code of a sample. */
  int code(int x, int y, int channel) {
    float value = encoded[channel][y * WIDTH + x];
    return Math.round(Math.max(0, Math.min(1, value)) * full());
  }

  private int full() {
    return (1 << depth) - 1;
  }

  /** Bands of the picture in linear light. */
  Planes[] bands() {
    Planes[] bands = new Planes[HEIGHT / BAND_ROWS];
    for (int band = 0; band < bands.length; band++) {
      Region area = Region.ofSize(WIDTH, HEIGHT).rows(band * BAND_ROWS, (band + 1) * BAND_ROWS);
      bands[band] = new Planes(area, 3);
      for (int c = 0; c < 3; c++) {
        for (int y = area.top(); y < area.bottom(); y++) {
          for (int x = 0; x < WIDTH; x++) {
            bands[band].plane(c)[bands[band].at(x, y)] = linear[code(x, y, c)];
          }
        }
      }
    }
    return bands;
  }

  /** A file of it. */
  SinkSpec spec(Path file, FileKind kind) {
    return new SinkSpec(
        file,
        kind.format(),
        depth,
        NamedSpace.SRGB,
        kind.compress(),
        QUALITY,
        depth == 8 && kind.format() != Format.JPEG,
        WIDTH,
        HEIGHT,
        BAND_ROWS,
        ColourSpace.of(NamedSpace.SRGB),
        SinkSpec.DOTS_PER_INCH,
        Captions.NONE,
        0);
  }

  /** Encodes a file to its end, and gives it its name or leaves nothing behind. */
  static void write(SinkSpec spec, Planes[] bands, boolean keep) {
    try (Sink sink = Sinks.open(spec)) {
      for (int band = 0; band < bands.length; band++) {
        sink.append(band, sink.encode(band, bands[band]));
      }
      if (keep) {
        sink.commit();
      } else {
        sink.finish(() -> false);
      }
    }
  }

  /** A folder for files, to be given to {@link #delete}. */
  static Path folder() {
    try {
      return Files.createTempDirectory("duskply-kernels");
    } catch (IOException e) {
      throw new IllegalStateException("No room for files in the temporary folder", e);
    }
  }

  /** Deletes a folder of files. */
  static void delete(Path folder) throws IOException {
    try (var files = Files.list(folder)) {
      for (Path file : files.toList()) {
        Files.delete(file);
      }
    }
    Files.delete(folder);
  }
}
