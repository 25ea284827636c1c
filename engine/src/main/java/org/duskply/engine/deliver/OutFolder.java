package org.duskply.engine.deliver;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;

/** The one folder that files are delivered to, and the fence around it. */
public final class OutFolder {
  private OutFolder() {}

  /**
   * The file of this name in a folder. Nothing is made or opened.
   *
   * @param folder the folder that may be written to; it need not be there yet
   * @param name relative, {@code /} between folders, as {@link FileNames#resolve} gives it
   * @throws DeliverException if the name leads out of the folder, be it by {@code ..}, by a root of
   *     its own or through a symbolic link
   */
  public static Path file(Path folder, String name) {
    Path file = resolve(folder, name);
    if (!inside(folder, file) || !reallyInside(folder, file)) {
      throw outside(folder, name);
    }
    return file;
  }

  private static boolean inside(Path folder, Path file) {
    Path root = folder.toAbsolutePath().normalize();
    Path end = file.toAbsolutePath().normalize();
    return end.startsWith(root) && !end.equals(root);
  }

  private static Path resolve(Path folder, String name) {
    try {
      Path relative = folder.getFileSystem().getPath(name);
      for (Path step : relative) {
        if (step.toString().equals("..")) {
          throw outside(folder, name);
        }
      }
      if (relative.isAbsolute()) {
        throw outside(folder, name);
      }
      return folder.resolve(relative).normalize();
    } catch (InvalidPathException e) {
      throw new DeliverException("\"" + name + "\" cannot be a file name on this system.", e);
    }
  }

  /**
   * Whether the nearest folder above the file that exists lies inside once links are followed. A
   * link at the file's own name does no harm: {@link SafeFile} replaces it.
   */
  private static boolean reallyInside(Path folder, Path file) {
    if (!Files.exists(folder)) {
      return true; // what is not there holds no link
    }
    try {
      Path above = file.toAbsolutePath().getParent();
      while (above != null && !Files.exists(above, LinkOption.NOFOLLOW_LINKS)) {
        above = above.getParent();
      }
      return above != null && above.toRealPath().startsWith(folder.toRealPath());
    } catch (IOException e) {
      return false; // a dangling link, or a folder that may not be looked into
    }
  }

  private static DeliverException outside(Path folder, String name) {
    return new DeliverException(
        "\"" + name + "\" leads out of the folder " + folder + " that files are delivered to.");
  }
}
