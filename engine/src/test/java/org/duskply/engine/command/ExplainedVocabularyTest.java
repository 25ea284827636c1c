package org.duskply.engine.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import javax.imageio.ImageIO;
import org.duskply.engine.Composite;
import org.duskply.engine.Engine;
import org.duskply.engine.frame.ProfileOfTables;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.PngFile;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.step.Blend;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Verb;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every word of a recipe is told in a sentence, held to the letter. {@code -Dexplain.write=true}
 * writes the text anew; read it aloud before it is committed.
 */
class ExplainedVocabularyTest {
  private static final Path RESOURCES = Path.of("src/test/resources/explain");
  private static final Path EXPECTED = RESOURCES.resolve("vocabulary.txt");
  private static final int WIDTH = 60;
  private static final int HEIGHT = 40;

  @TempDir Path folder;

  @Test
  void theWholeVocabularyIsToldToTheLetter() throws IOException {
    Path recipe = desk();
    try (Engine engine = Engine.builder().threads(1).memory(64 << 20).build();
        Composite composite = engine.open(recipe)) {
      everyWordIsThere(composite.recipe());
      String told = told(composite);
      if (Boolean.getBoolean("explain.write")) {
        Files.writeString(EXPECTED, told);
      }
      assertThat(told).isEqualTo(Files.readString(EXPECTED));
      assertThat(told.lines()).allMatch(line -> line.length() <= 100);
      assertThat(told.lines()).noneMatch(line -> line.endsWith(" "));
    }
  }

  @Test
  void theSentencesAreTheSameInEveryLocale() throws IOException {
    Path recipe = desk();
    Locale before = Locale.getDefault();
    try (Engine engine = Engine.builder().threads(1).memory(64 << 20).build();
        Composite composite = engine.open(recipe)) {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertThat(told(composite)).isEqualTo(Files.readString(EXPECTED));
    } finally {
      Locale.setDefault(before);
    }
  }

  /** All but the last paragraph, which is of the machine. */
  private static String told(Composite composite) {
    String text = ExplanationText.of(composite, composite.explain());
    return text.substring(0, text.indexOf("\nRendering needs "));
  }

  private Path desk() throws IOException {
    Desk desk = new Desk(folder, WIDTH, HEIGHT);
    desk.write("dusk.tif", shot(desk.file(0), 4, 80).bytes());
    desk.write("shot.tif", shot(desk.file(1), 1, 56).bytes());
    byte[] tables = ProfileOfTables.of("RGB ");
    desk.write("scan.tif", desk.file(2).raw(34675, 7, tables.length, tables).bytes());
    TiffFile cut = new TiffFile(WIDTH, HEIGHT, 4, 16, (x, y, c) -> c == 3 ? 900 * x : 500 * y);
    desk.write("cut.tif", cut.shorts(338, 2).strips(8).bytes()); // TIFF 6.0: unassociated alpha
    desk.write("paint.png", new PngFile(WIDTH, HEIGHT, 0, 8, (x, y, c) -> 4 * x).bytes());
    ImageIO.write(
        new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB),
        "jpeg",
        folder.resolve("photo.jpg").toFile());
    desk.write(
        "outlines.svg",
        """
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 80">
          <polygon id="roof" points="20,30 60,5 100,30"/>
          <rect id="door" x="50" y="40" width="20" height="30"/>
        </svg>
        """
            .getBytes(StandardCharsets.UTF_8));
    return desk.write("vocabulary.yaml", Files.readAllBytes(RESOURCES.resolve("vocabulary.yaml")));
  }

  /** A frame with a camera's record: exposure time, aperture, sensitivity. */
  private static TiffFile shot(TiffFile file, int quarters, int tenths) {
    return file.camera(33434, 5, 1, file.rational(quarters, 4))
        .camera(33437, 5, 1, file.rational(tenths, 10))
        .camera(34855, 3, 1, new byte[] {100, 0});
  }

  /** What is new to the vocabulary belongs into the recipe, and its sentence into the text. */
  private static void everyWordIsThere(Recipe recipe) {
    List<Object> all = new ArrayList<>();
    collect(recipe.steps(), all);
    collect(recipe.finish().steps(), all);
    recipe.masks().values().forEach(mask -> collect(mask, all));
    Set<Object> met = new HashSet<>();
    for (Object each : all) {
      met.add(each.getClass());
      if (each instanceof Lay lay) {
        met.add(lay.blend());
      }
    }
    assertThat(met)
        .contains((Object[]) Verb.class.getPermittedSubclasses())
        .contains((Object[]) MaskKind.class.getPermittedSubclasses())
        .contains((Object[]) Adjustment.class.getPermittedSubclasses())
        .contains((Object[]) Blend.values());
  }

  /** Everything that a record holds, and what that holds. */
  private static void collect(Object thing, List<Object> all) {
    if (thing instanceof Iterable<?> several) {
      several.forEach(each -> collect(each, all));
    } else if (thing instanceof Record) {
      all.add(thing);
      for (RecordComponent part : thing.getClass().getRecordComponents()) {
        try {
          Object held = part.getAccessor().invoke(thing);
          if (held != null) {
            collect(held, all);
          }
        } catch (ReflectiveOperationException e) {
          throw new AssertionError(e);
        }
      }
    }
  }
}
