package org.duskply.engine.frame;

import com.twelvemonkeys.imageio.plugins.jpeg.JPEGImageReaderSpi;
import com.twelvemonkeys.imageio.plugins.tiff.TIFFImageReaderSpi;
import java.io.IOException;
import java.util.Iterator;
import java.util.List;
import javax.imageio.ImageReader;
import javax.imageio.spi.IIORegistry;
import javax.imageio.spi.ImageReaderSpi;
import javax.imageio.spi.ServiceRegistry;

/**
 * The general-purpose image readers that are used, each made directly. None is found by service
 * files, which are lost when jars are merged, and none is entered into the JDK's registry, which
 * belongs to whoever embeds the engine.
 */
final class ImageReaders {
  private static final String JDK_PNG = "com.sun.imageio.plugins.png.PNGImageReaderSpi";
  private static final String JDK_JPEG = "com.sun.imageio.plugins.jpeg.JPEGImageReaderSpi";

  private ImageReaders() {}

  static ImageReader png() throws IOException {
    return jdk(JDK_PNG).createReaderInstance();
  }

  static ImageReader tiff() throws IOException {
    ImageReaderSpi spi = new TIFFImageReaderSpi();
    return spi.createReaderInstance();
  }

  /** Reads around broken markers that stop the JDK's own reader, which it then hands them to. */
  static ImageReader jpeg() throws IOException {
    ServiceRegistry own = new ServiceRegistry(List.<Class<?>>of(ImageReaderSpi.class).iterator());
    own.registerServiceProvider(jdk(JDK_JPEG), ImageReaderSpi.class);
    ImageReaderSpi spi = new JPEGImageReaderSpi();
    own.registerServiceProvider(spi, ImageReaderSpi.class);
    return spi.createReaderInstance();
  }

  private static ImageReaderSpi jdk(String className) {
    Iterator<ImageReaderSpi> all =
        IIORegistry.getDefaultInstance().getServiceProviders(ImageReaderSpi.class, false);
    while (all.hasNext()) {
      ImageReaderSpi spi = all.next();
      if (spi.getClass().getName().equals(className)) {
        return spi;
      }
    }
    throw new IllegalStateException("The Java runtime has no reader " + className + ".");
  }
}
