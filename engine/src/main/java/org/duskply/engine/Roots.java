package org.duskply.engine;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * The folders that frames may lie in: the recipe's own, and those that the caller allows. A path
 * that leads elsewhere, be it by its words or through a link, is refused.
 *
 * @param folder the recipe's folder
 * @param allowed further folders
 * @param tolerant whether frames that are cut short or damaged are read as far as they go
 */
record Roots(Path folder, List<Path> allowed, boolean tolerant) {
  /**
   * The file that a recipe means.
   *
   * @throws DuskplyException if it lies outside the folders
   */
  Path resolve(String file) throws IOException {
    Path path = folder.resolve(file).normalize();
    if (!Files.exists(path)) {
      if (!within(path.toAbsolutePath(), false)) {
        throw outside(file);
      }
      return path; // its absence is told by whoever opens it
    }
    if (!within(path.toRealPath(), true)) {
      throw outside(file);
    }
    return path;
  }

  private boolean within(Path path, boolean real) throws IOException {
    if (path.startsWith(real ? folder.toRealPath() : folder.toAbsolutePath().normalize())) {
      return true;
    }
    for (Path root : allowed) {
      if (Files.exists(root)
          && path.startsWith(real ? root.toRealPath() : root.toAbsolutePath().normalize())) {
        return true;
      }
    }
    return false;
  }

  private static DuskplyException outside(String file) {
    return new DuskplyException(
        file
            + " lies outside the recipe's folder. Move it there, or allow its folder with --allow DIR (Engine.builder().allow(…)).");
  }
}
