package org.duskply.engine.command;

import java.io.File;
import java.io.IOException;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;

/** A program that runs {@link Main} as if no jar had a service file. */
final class WithoutServices {
  private WithoutServices() {}

  public static void main(String[] arguments) throws Exception {
    List<URL> path = new ArrayList<>();
    for (String part : System.getProperty("java.class.path").split(File.pathSeparator)) {
      path.add(url(part));
    }
    ClassLoader bare = new Bare(path.toArray(URL[]::new));
    Thread.currentThread().setContextClassLoader(bare);
    ImageIO.getImageReadersByFormatName("tiff")
        .forEachRemaining(
            reader -> {
              if (reader.getClass().getName().startsWith("com.twelvemonkeys")) {
                throw new IllegalStateException("service files are not hidden");
              }
            });
    Class.forName(Main.class.getName(), true, bare)
        .getMethod("main", String[].class)
        .invoke(null, (Object) arguments);
  }

  private static URL url(String part) throws MalformedURLException {
    return Path.of(part).toUri().toURL();
  }

  /** Loads everything but the JDK itself, and finds no service files. */
  private static final class Bare extends URLClassLoader {
    private static final String SERVICES = "META-INF/services/";

    Bare(URL[] path) {
      super(path, ClassLoader.getPlatformClassLoader());
    }

    @Override
    public @Nullable URL findResource(String name) {
      return name.startsWith(SERVICES) ? null : super.findResource(name);
    }

    @Override
    public Enumeration<URL> findResources(String name) throws IOException {
      return name.startsWith(SERVICES) ? Collections.emptyEnumeration() : super.findResources(name);
    }
  }
}
