package org.duskply.recipe.deliver;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** File formats that can be delivered, told by the file's ending. */
public enum Format {
  TIFF(".tif", ".tiff"),
  PNG(".png", ".png"),
  JPEG(".jpg", ".jpeg");

  private final String usual;
  private final String other;

  Format(String usual, String other) {
    this.usual = usual;
    this.other = other;
  }

  /** The endings that stand for it, with their point, the usual one first. */
  public List<String> endings() {
    return List.of(usual, other);
  }

  /** The format of a file by its ending, in small or capital letters. */
  public static Optional<Format> ofFile(String file) {
    String lower = file.toLowerCase(Locale.ROOT);
    for (Format format : values()) {
      if (lower.endsWith(format.usual) || lower.endsWith(format.other)) {
        return Optional.of(format);
      }
    }
    return Optional.empty();
  }
}
