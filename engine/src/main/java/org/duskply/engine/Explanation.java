package org.duskply.engine;

import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A recipe told step by step, with what it will take to render.
 *
 * @param alternate the alternate that is told; {@code main} for the recipe as it stands
 * @param steps from the first done to the last, groups before their members
 * @param crop what of the picture is kept, as a sentence; absent: all
 * @param finish the steps done over the cropped picture
 * @param masks the masks that steps use and do not tell themselves: those that are only parts of
 *     other masks, and those with much to tell
 * @param frames the frames that are read
 * @param alternates what each alternate does otherwise
 * @param deliverables the files that would be written
 * @param floorBytes fewest bytes of working memory with which all deliverables can be rendered
 * @param allowedBytes bytes of working memory that may be used
 * @param cores how many threads will work
 * @param coreSeconds rough processor time of the rendering
 */
public record Explanation(
    String alternate,
    List<StepLine> steps,
    @Nullable String crop,
    List<StepLine> finish,
    List<NamedLine> masks,
    List<FrameLine> frames,
    List<NamedLine> alternates,
    List<NamedLine> deliverables,
    long floorBytes,
    long allowedBytes,
    int cores,
    double coreSeconds) {

  /**
   * One step.
   *
   * @param name how the recipe or {@code --only} can call it
   * @param title what the photographer calls it; absent where the recipe gives none
   * @param depth 0 for a step of the recipe, 1 in a group, and so on
   * @param sentence what it does, in whole sentences with all its numbers
   * @param formula the same as an equation in linear light: b is the picture below, f the frame, m
   *     the mask, c the frame's coverage, x a channel, Y luminance, E the way to the encoded axis,
   *     L the way back
   * @param maskArea share of the picture that its mask shows, 0 to 1, weighted by the mask; 1
   *     without a mask, 0 where it is not done, NaN where the mask is read off pictures, which are
   *     not decoded to explain it
   * @param done whether it is done at all: not skipped, opacity above 0
   */
  public record StepLine(
      String name,
      @Nullable String title,
      int depth,
      String sentence,
      String formula,
      double maskArea,
      boolean done) {}

  /**
   * One mask, alternate or deliverable.
   *
   * @param name its name in the recipe
   * @param sentence what it is, in whole sentences
   */
  public record NamedLine(String name, String sentence) {}

  /**
   * One frame.
   *
   * @param name its name in the recipe
   * @param file its file, as the recipe writes it
   * @param description size, depth, camera settings, colour space and what is done on reading, in
   *     whole sentences
   * @param reader which reader takes it, and why
   * @param unitsRead which of its units will be decoded, the topmost being 0
   * @param units how many it has
   */
  public record FrameLine(
      String name, String file, String description, String reader, BitSet unitsRead, int units) {
    public FrameLine {
      unitsRead = copy(unitsRead);
    }

    @Override
    public BitSet unitsRead() {
      return copy(unitsRead);
    }

    private static BitSet copy(BitSet units) {
      return (BitSet) units.clone();
    }
  }
}
