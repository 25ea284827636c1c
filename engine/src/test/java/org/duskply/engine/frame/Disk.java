package org.duskply.engine.frame;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;

/** A folder in memory. */
final class Disk {
  private static final FileSystem MEMORY = Jimfs.newFileSystem(Configuration.unix());

  private Disk() {}

  /** Writes a file, in place of one of the same name. */
  static Path file(String name, byte[] bytes) {
    try {
      return Files.write(MEMORY.getPath(name), bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A file that is not there. */
  static Path missing(String name) {
    return MEMORY.getPath(name);
  }
}
