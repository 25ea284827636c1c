package org.duskply.engine.deliver;

import java.awt.image.Raster;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.frame.FrameReader;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.FrameSources;
import org.duskply.engine.frame.Samples;

/** The codes of a file as readers see them that are no part of this project. */
final class Readers {
  private Readers() {}

  /** By every reader of the JDK and of TwelveMonkeys for the format. */
  static List<int[]> imageIo(Path file, String format) throws IOException {
    return imageIo(file, format, "");
  }

  /** By the readers whose class has a name that begins so. */
  static List<int[]> imageIo(Path file, String format, String maker) throws IOException {
    List<int[]> all = new ArrayList<>();
    Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(format);
    while (readers.hasNext()) {
      ImageReader reader = readers.next();
      if (!reader.getClass().getName().startsWith(maker)) {
        continue;
      }
      try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
        reader.setInput(in);
        all.add(samples(reader.read(0).getRaster()));
      } finally {
        reader.dispose();
      }
    }
    return all;
  }

  private static int[] samples(Raster raster) {
    return raster.getPixels(0, 0, raster.getWidth(), raster.getHeight(), (int[]) null);
  }

  /** By the reader that frames of a composite are read with. */
  static int[] own(Path file) {
    FrameSource source = FrameSources.open(file);
    FrameInfo info = source.info();
    int[] codes = new int[info.width() * info.height() * info.channels()];
    int at = 0;
    try (FrameReader reader = source.reader()) {
      for (int unit = 0; unit < source.units(); unit++) {
        Samples samples = reader.read(unit);
        int count = (int) samples.area().count() * samples.channels();
        for (int i = 0; i < count; i++) {
          boolean bytes = samples.kind() == Samples.Kind.BYTES;
          codes[at++] = bytes ? samples.bytes()[i] & 0xFF : samples.shorts()[i] & 0xFFFF;
        }
      }
    }
    return codes;
  }

  /** By libvips, which has libtiff, libpng and libjpeg read for it. */
  static int[] vips(Path file, int depth) throws IOException, InterruptedException {
    Path raw = file.resolveSibling(file.getFileName() + ".raw");
    Tool.run("vips", "rawsave", file, raw);
    byte[] bytes = Files.readAllBytes(raw);
    Files.delete(raw);
    int[] codes = new int[bytes.length / (depth / 8)];
    ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.nativeOrder());
    for (int i = 0; i < codes.length; i++) {
      codes[i] = depth == 8 ? in.get() & 0xFF : in.getShort() & 0xFFFF;
    }
    return codes;
  }
}
