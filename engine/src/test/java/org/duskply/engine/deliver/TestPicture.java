package org.duskply.engine.deliver;

import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.DecodeTable;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.recipe.NamedSpace;

/** A picture of known codes, and the linear planes that stand for them. */
final class TestPicture {
  private static final Map<String, float[]> LINEAR = new ConcurrentHashMap<>();

  final int width;
  final int height;
  final int depth;
  final int[] codes;
  private final NamedSpace space;

  private TestPicture(int width, int height, int depth, NamedSpace space, int[] codes) {
    this.width = width;
    this.height = height;
    this.depth = depth;
    this.space = space;
    this.codes = codes;
  }

  interface Pixel {
    int code(int x, int y, int channel);
  }

  static TestPicture of(int width, int height, int depth, NamedSpace space, Pixel pixel) {
    int[] codes = new int[width * height * 3];
    for (int i = 0; i < codes.length; i++) {
      codes[i] = pixel.code(i / 3 % width, i / 3 / width, i % 3);
    }
    return new TestPicture(width, height, depth, space, codes);
  }

  /** Gradients with noise, and the extreme codes. */
  static TestPicture noisy(int width, int height, int depth, NamedSpace space, long seed) {
    Random random = new Random(seed);
    int top = (1 << depth) - 1;
    return of(
        width,
        height,
        depth,
        space,
        (x, y, c) -> {
          int die = random.nextInt(40);
          int smooth = (int) ((x + 1L) * (y + c + 1) * top / ((width + 1L) * (height + 3)));
          int noisy = smooth + random.nextInt(top / 50 + 1) - top / 100;
          return die == 0 ? 0 : die == 1 ? top : Math.max(0, Math.min(top, noisy));
        });
  }

  /** The linear rows of a band. */
  Planes rows(Region area) {
    float[] linear =
        LINEAR.computeIfAbsent(
            space + " " + depth, k -> DecodeTable.of(ColourSpace.of(space).curve(0), 1 << depth));
    Planes rows = new Planes(area, 3);
    for (int c = 0; c < 3; c++) {
      for (int y = area.top(); y < area.bottom(); y++) {
        for (int x = 0; x < width; x++) {
          rows.plane(c)[rows.at(x, y)] = linear[codes[(y * width + x) * 3 + c]];
        }
      }
    }
    return rows;
  }

  /** Delivers the picture with one thread. */
  void deliver(SinkSpec spec) {
    try (Sink sink = Sinks.open(spec)) {
      for (int k = 0; k < sink.bands(); k++) {
        sink.append(k, sink.encode(k, rows(spec.layout().area(k))));
      }
      sink.commit();
    }
  }
}
