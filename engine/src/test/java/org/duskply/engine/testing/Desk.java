package org.duskply.engine.testing;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.duskply.engine.colour.IccWriter;
import org.duskply.recipe.NamedSpace;

/**
 * A folder with a recipe and frames, as on a photographer's desk, small. Frames are 16-bit TIFF
 * files of shapes that a scene has: a dusk gradient, a bright and a dark half, edges, some clipped
 * and some black pixels, fine texture.
 */
public final class Desk {
  private static final int ICC_PROFILE = 34675;

  private final Path folder;
  private final int width;
  private final int height;

  /** A desk in {@code folder} for frames of {@code width × height}. */
  public Desk(Path folder, int width, int height) {
    this.folder = folder;
    this.width = width;
    this.height = height;
  }

  /** Its folder. */
  public Path folder() {
    return folder;
  }

  /** Writes a recipe. */
  public Path recipe(String text) {
    return write("recipe.yaml", text.getBytes(StandardCharsets.UTF_8));
  }

  /** Writes bytes to a file. */
  public Path write(String name, byte[] bytes) {
    try {
      Path file = folder.resolve(name);
      Files.createDirectories(file.getParent());
      return Files.write(file, bytes);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  /** Writes a frame of sRGB without a profile. */
  public Path frame(String name, int seed) {
    return write(name, file(seed).bytes());
  }

  /** Writes a frame with the embedded profile of a named space. */
  public Path frame(String name, int seed, NamedSpace space) {
    byte[] profile = IccWriter.profile(space);
    return write(name, file(seed).raw(ICC_PROFILE, 7, profile.length, profile).bytes());
  }

  /** A frame's file, to be changed. */
  public TiffFile file(int seed) {
    return new TiffFile(width, height, 3, 16, (x, y, c) -> sample(seed, x, y, c))
        .compression(8)
        .predictor(2)
        .strips(8);
  }

  /** The stored sample of a frame. */
  public int sample(int seed, int x, int y, int c) {
    long h = (seed * 1_000_003L + x) * 1_000_003L + y * 31L + c;
    h *= 0x9E3779B97F4A7C15L;
    h ^= h >>> 29;
    h *= 0xBF58476D1CE4E5B9L;
    int noise = (int) (h >>> 52); // 0 to 4095
    int slope = 50_000 * y / height + (9_000 * x / width) * (c + 1) / (1 + (seed & 3));
    int part = (x / 17 + y / 13 + seed) % 5;
    return switch (part) {
      case 0 -> noise / 64;
      case 1 -> 65535;
      case 2 -> 65535 - slope / (c + 2);
      default -> Math.min(65535, slope + noise);
    };
  }
}
