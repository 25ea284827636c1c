package org.duskply.engine.command;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the path of a file or folder. */
final class FilePath implements ITypeConverter<Path> {
  @Override
  public Path convert(String text) {
    if (text.isEmpty()) {
      throw new TypeConversionException("a path cannot be empty");
    }
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw new TypeConversionException(
          "'"
              + text
              + "' cannot be a file name here; if it has accents, the terminal's language setting"
              + " may lack them (LC_ALL=C.UTF-8 has all)");
    }
  }
}
