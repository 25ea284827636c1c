package org.duskply.engine.command;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a level of deflate. */
final class DeflateLevel implements ITypeConverter<Integer> {
  @Override
  public Integer convert(String text) {
    if (text.length() != 1 || text.charAt(0) < '1' || text.charAt(0) > '9') {
      throw new TypeConversionException("'" + text + "' is no level of deflate; write 1 to 9");
    }
    return text.charAt(0) - '0';
  }
}
