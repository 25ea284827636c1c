package org.duskply.engine.testing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import net.imglib2.RandomAccess;
import net.imglib2.RandomAccessibleInterval;
import net.imglib2.type.numeric.real.FloatType;
import org.duskply.engine.frame.FrameReader;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.FrameSources;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/** Pictures of one kind as another. */
public final class Pictures {
  private Pictures() {}

  /** All of an image of width × height × 3. */
  public static Planes planes(RandomAccessibleInterval<FloatType> image) {
    return planes(image, Region.ofSize((int) image.dimension(0), (int) image.dimension(1)));
  }

  /** A rectangle of an image. */
  public static Planes planes(RandomAccessibleInterval<FloatType> image, Region region) {
    Planes planes = new Planes(region, 3);
    RandomAccess<FloatType> at = image.randomAccess();
    for (int p = 0; p < 3; p++) {
      for (int y = region.top(); y < region.bottom(); y++) {
        for (int x = region.left(); x < region.right(); x++) {
          at.setPosition(x, 0);
          at.setPosition(y, 1);
          at.setPosition(p, 2);
          planes.plane(p)[planes.at(x, y)] = at.get().get();
        }
      }
    }
    return planes;
  }

  /** The stored 16-bit samples of a TIFF file, pixel after pixel. */
  public static short[] codes(Path tiff) {
    FrameSource source = FrameSources.open(tiff);
    int channels = source.info().channels();
    short[] all = new short[source.info().width() * source.info().height() * channels];
    try (FrameReader reader = source.reader()) {
      int at = 0;
      for (int u = 0; u < source.units(); u++) {
        short[] unit = reader.read(u).shorts();
        System.arraycopy(unit, 0, all, at, unit.length);
        at += unit.length;
      }
    }
    return all;
  }

  /** The stored samples of a picture file of 8 or 16 bits, pixel after pixel. */
  public static int[] samples(Path file) {
    FrameSource source = FrameSources.open(file);
    int channels = source.info().channels();
    int[] all = new int[source.info().width() * source.info().height() * channels];
    try (FrameReader reader = source.reader()) {
      int at = 0;
      for (int u = 0; u < source.units(); u++) {
        Samples unit = reader.read(u);
        int count = (int) unit.area().count() * channels;
        for (int i = 0; i < count; i++) {
          all[at++] =
              unit.kind() == Samples.Kind.BYTES
                  ? unit.bytes()[i] & 0xff
                  : unit.shorts()[i] & 0xffff;
        }
      }
    }
    return all;
  }

  /** A file's bytes. */
  public static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }
}
