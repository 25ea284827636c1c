package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Whatever names a frame counts, and nothing that is not done. */
class UsedFramesTest {
  private static final String HEAD =
      """
      duskply: 1
      base: dusk
      frames:
        dusk: a.tif
        pop: { file: b.tif, match: { frame: ref, by: exif } }
        ref: c.tif
        sky: d.tif
        test: e.tif
        idle: f.tif
      """;

  private static Iterable<String> used(String rest) {
    return UsedFrames.of(RecipeReader.read("r.yaml", HEAD + rest));
  }

  @Test
  void theBaseAndWhatItIsComparedWith() {
    assertThat(used("")).containsExactly("dusk");
    assertThat(used("before: test")).containsExactly("dusk", "test");
  }

  @Test
  void stepsAndTheFramesTheirsAreMatchedTo() {
    assertThat(used("steps: [{ lay: sky }, { pop: pop }]"))
        .containsExactly("dusk", "sky", "pop", "ref");
  }

  @Test
  void groupsAndTheFinish() {
    assertThat(used("steps: [{ group: [{ group: [{ pop: sky }] }] }]"))
        .containsExactly("dusk", "sky");
    assertThat(used("finish: { steps: [{ lay: sky }] }")).containsExactly("dusk", "sky");
  }

  @Test
  void notStepsThatAreLeftOut() {
    assertThat(used("steps: [{ lay: sky, skip: true }, { pop: pop, opacity: 0 }]"))
        .containsExactly("dusk");
    assertThat(used("steps: [{ skip: true, group: [{ pop: sky }] }]")).containsExactly("dusk");
    assertThat(used("steps: [{ group: [{ pop: sky, skip: true }, { pop: test }] }]"))
        .containsExactly("dusk", "test");
  }

  @Test
  void masksAreWalkedOnceEvenWhereTheyUseEachOther() {
    assertThat(
            used(
                """
                masks: { a: { any-of: [b, b, { within: [b] }] }, b: {} }
                steps: [{ pop: dusk, mask: a }, { pop: dusk, mask: { except: [a] } }]
                """))
        .containsExactly("dusk");
  }
}
