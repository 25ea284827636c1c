package org.duskply.engine.frame;

import java.util.List;
import org.duskply.recipe.NamedSpace;
import org.jspecify.annotations.Nullable;

/**
 * What a frame's file says about itself.
 *
 * @param width of the upright picture, in pixels
 * @param height of the upright picture, in pixels
 * @param channels samples a pixel as {@link Samples} hold them: {@link #colours}, and one more
 *     where there is alpha
 * @param alpha what the last channel is
 * @param kind how samples are held
 * @param fullScale the stored value that stands for 1.0: 255, 65535, 4095 …; 1 for floats
 * @param profile the embedded ICC profile, or absent
 * @param named a colour space that the file names without a profile (the sRGB chunk of a PNG), or
 *     absent
 * @param exif the camera's record, empty where there is none
 * @param notices sentences about odd things that do not stop the pixels from being right
 */
public record FrameInfo(
    int width,
    int height,
    int channels,
    Alpha alpha,
    Samples.Kind kind,
    double fullScale,
    byte @Nullable [] profile,
    @Nullable NamedSpace named,
    Exif exif,
    List<String> notices) {

  /** Colour samples a pixel: 1 grey, 3 RGB, 4 CMYK (full scale being all of an ink). */
  public int colours() {
    return alpha == Alpha.NONE ? channels : channels - 1;
  }

  /** What a frame's last channel is. */
  public enum Alpha {
    /** There is no alpha. */
    NONE,
    /** Colours are as they are. */
    STRAIGHT,
    /** Colours are stored multiplied by alpha, in the encoded domain. */
    ASSOCIATED
  }
}
