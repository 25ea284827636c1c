package org.duskply.engine;

import java.nio.file.Path;
import java.util.Set;
import org.duskply.engine.testing.Desk;
import org.junit.jupiter.api.io.TempDir;

/**
 * What tests of recipes of three small frames share: {@code dusk}, the base, {@code a}, {@code b}.
 */
abstract class ThreeFrames {
  @TempDir Path folder;

  static final String HEAD =
      """
      duskply: 1
      base: dusk
      frames: { dusk: frames/0.tif, a: frames/1.tif, b: frames/2.tif }
      """;

  final Desk desk(int width, int height) {
    Desk desk = new Desk(folder, width, height);
    for (int i = 0; i < 3; i++) {
      desk.frame("frames/" + i + ".tif", i);
    }
    return desk;
  }

  final Delivered deliver(Engine engine, Path recipe) {
    try (Composite composite = engine.open(recipe)) {
      return composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT);
    }
  }
}
