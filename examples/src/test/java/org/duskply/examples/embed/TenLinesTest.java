package org.duskply.examples.embed;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The README's ten lines, run on two small frames whose composite is known by heart. */
class TenLinesTest {
  private static final int WIDTH = 8;
  private static final int HEIGHT = 6;
  private static final int DUSK = 100;
  private static final int POP = 200;

  private static final String RECIPE =
      """
      duskply: 1
      base: dusk
      frames: { dusk: dusk.png, pop: pop.png }
      masks: { left: { polygon: "0,0 4,0 4,6 0,6" } }
      steps: [ { pop: pop, mask: left } ]
      deliverables: { screen: { file: small.png } }
      """;

  @TempDir Path folder;

  /** Left of the mask's edge the brighter frame, right of it the base, both to the very code. */
  @Test
  void rendersTheRecipe() throws IOException {
    frame("dusk.png", DUSK);
    frame("pop.png", POP);
    Path recipe = Files.writeString(folder.resolve("small.yaml"), RECIPE);

    String printed = printed(() -> TenLines.render(recipe, folder.resolve("out")));

    Path file = folder.resolve("out").resolve("small.png");
    BufferedImage made = ImageIO.read(file.toFile());
    assertThat(made.getWidth()).isEqualTo(WIDTH);
    assertThat(made.getHeight()).isEqualTo(HEIGHT);
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        int expected = x < 4 ? POP : DUSK;
        assertThat(made.getRaster().getPixel(x, y, (int[]) null))
            .as("pixel %d, %d", x, y)
            .startsWith(expected, expected, expected);
      }
    }
    assertThat(printed).contains("small.png, 8 x 6");
  }

  @Test
  void printsAllProblemsOfARecipe() throws IOException {
    String wrong = RECIPE.replace("base: dusk", "base: dusc").replace("4,0 4,6 0,6", "4,6");
    Path recipe = Files.writeString(folder.resolve("wrong.yaml"), wrong);

    String printed = printed(() -> TenLines.render(recipe, folder.resolve("out")));

    assertThat(printed).contains("wrong.yaml:2:7", "did you mean `dusk`", "at least 3");
    assertThat(folder.resolve("out")).doesNotExist();
  }

  private void frame(String name, int code) throws IOException {
    BufferedImage frame = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
    int[] codes = new int[WIDTH * HEIGHT * 3];
    Arrays.fill(codes, code);
    frame.getRaster().setPixels(0, 0, WIDTH, HEIGHT, codes);
    assertThat(ImageIO.write(frame, "png", folder.resolve(name).toFile())).isTrue();
  }

  private static String printed(Runnable run) {
    PrintStream out = System.out;
    PrintStream err = System.err;
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (PrintStream caught = new PrintStream(bytes, true, StandardCharsets.UTF_8)) {
      System.setOut(caught);
      System.setErr(caught);
      run.run();
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
    return bytes.toString(StandardCharsets.UTF_8);
  }
}
