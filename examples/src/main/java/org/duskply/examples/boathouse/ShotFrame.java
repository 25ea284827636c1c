package org.duskply.examples.boathouse;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A part of a frame as the camera wrote it: 16-bit codes, row by row, red, green, blue a pixel.
 *
 * @param shot which press of the shutter
 * @param width of the part, which is that of the whole frame
 * @param height rows of the part
 * @param codes three a pixel
 */
public record ShotFrame(Shot shot, int width, int height, char[] codes) {

  /** The whole evening from one set of buffers; the assistant is never in view here. */
  public static List<ShotFrame> all(Buffers buffers) {
    List<ShotFrame> frames = new ArrayList<>();
    for (Shot shot : Evening.shots()) {
      frames.add(expose(shot, buffers, null));
    }
    return frames;
  }

  /**
   * Exposes a band of full rows.
   *
   * @param person what replaces a part of the band while the assistant stands there, or null
   */
  static ShotFrame expose(Shot shot, Buffers band, @Nullable Buffers person) {
    int width = band.width();
    char[] codes = new char[3 * width * band.height()];
    float[] weights = shot.weights();
    for (int y = 0; y < band.height(); y++) {
      for (int x = 0; x < width; x++) {
        Buffers from = band;
        int at = 3 * (y * width + x);
        int sample = at;
        if (person != null && holds(person, x, y + band.top())) {
          from = person;
          sample = 3 * ((y + band.top() - person.top()) * person.width() + x - person.left());
        }
        int pixel = (y + band.top()) * width + x;
        for (int c = 0; c < 3; c++) {
          float light = Sensor.light(weights, from, sample + c);
          codes[at + c] = (char) Sensor.code(Sensor.read(light, shot.number(), pixel, c));
        }
      }
    }
    return new ShotFrame(shot, width, band.height(), codes);
  }

  private static boolean holds(Buffers part, int x, int y) {
    return x >= part.left()
        && x < part.left() + part.width()
        && y >= part.top()
        && y < part.top() + part.height();
  }
}
