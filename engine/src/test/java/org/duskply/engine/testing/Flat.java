package org.duskply.engine.testing;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import net.imglib2.img.array.ArrayImgs;
import org.duskply.engine.Composite;
import org.duskply.engine.Engine;
import org.duskply.engine.MemoryFrame;
import org.duskply.engine.View;
import org.duskply.engine.pixel.Planes;
import org.duskply.recipe.RecipeReader;

/** Pictures made of frames in memory, in linear light of sRGB's primaries. */
public final class Flat {
  private final Desk desk;
  private final int width;
  private final int height;
  private final Map<String, MemoryFrame> frames = new LinkedHashMap<>();

  /** Light of a place; channel 3 is alpha. */
  public interface Light {
    float at(int x, int y, int channel);
  }

  /** A desk in {@code folder} for frames of {@code width × height}. */
  public Flat(Path folder, int width, int height) {
    this.desk = new Desk(folder, width, height);
    this.width = width;
    this.height = height;
  }

  /** Adds an opaque frame; the first is the base. */
  public Flat frame(String name, Light light) {
    return frame(name, 3, light);
  }

  /** Adds a frame that is transparent in places. */
  public Flat covered(String name, Light light) {
    return frame(name, 4, light);
  }

  private Flat frame(String name, int channels, Light light) {
    float[] values = new float[width * height * channels];
    for (int c = 0, i = 0; c < channels; c++) {
      for (int y = 0; y < height; y++) {
        for (int x = 0; x < width; x++) {
          values[i++] = light.at(x, y, c);
        }
      }
    }
    frames.put(name, MemoryFrame.of(ArrayImgs.floats(values, width, height, channels)));
    return this;
  }

  /** The recipe of these frames with {@code rest} behind them. */
  public Path recipe(String rest) {
    StringBuilder text = new StringBuilder("duskply: 1\nbase: ");
    text.append(frames.keySet().iterator().next()).append("\nframes:\n");
    frames.keySet().forEach(f -> text.append("  ").append(f).append(": memory.tif\n"));
    return desk.recipe(text + rest);
  }

  /** Opens a recipe with these frames. */
  public Composite open(Engine engine, String rest, View view) {
    Path recipe = recipe(rest);
    return engine.open(RecipeReader.read(recipe), desk.folder(), view, frames);
  }

  /** The finished picture. */
  public Planes picture(String rest) {
    return picture(rest, View.WHOLE);
  }

  /** The finished picture at a scale or of some steps. */
  public Planes picture(String rest, View view) {
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = open(engine, rest, view)) {
      return Pictures.planes(composite.image());
    }
  }
}
