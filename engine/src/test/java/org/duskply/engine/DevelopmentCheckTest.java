package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.measure.Scene;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code check} says of frames that were, or were not, developed alike. */
class DevelopmentCheckTest {
  private static final DoubleUnaryOperator PLAIN = Scene.curve(0);

  @TempDir Path folder;
  private final List<String> names = new ArrayList<>();

  /** A frame taken at f/8 and ISO 100, {@code second} seconds after nine in the evening. */
  private void shot(
      String name,
      double stops,
      int second,
      DoubleUnaryOperator look,
      Scene.Flash flash,
      double by) {
    TiffFile file = Scene.frame(names.size(), 16, stops + by, look, flash);
    long thousands = Math.round(1000 * StrictMath.pow(2, stops));
    String time =
        String.format(java.util.Locale.ROOT, "2031:06:14 21:%02d:%02d\0", second / 60, second % 60);
    file.camera(33434, 5, 1, file.rational(thousands, 1000))
        .camera(33437, 5, 1, file.rational(8, 1))
        .camera(34855, 3, 1, new byte[] {100, 0})
        .camera(36867, 2, 20, time.getBytes(StandardCharsets.US_ASCII));
    put(name, file);
  }

  private void shot(String name, double stops, int second, DoubleUnaryOperator look) {
    shot(name, stops, second, look, Scene.Flash.NONE, 0);
  }

  private void put(String name, TiffFile file) {
    new Desk(folder, Scene.WIDTH, Scene.HEIGHT).write(name + ".tif", file.bytes());
    names.add(name);
  }

  private List<Problem> measured() {
    StringBuilder text = new StringBuilder("duskply: 1\nbase: " + names.get(0) + "\nframes:\n");
    names.forEach(n -> text.append("  ").append(n).append(": ").append(n).append(".tif\n"));
    text.append("steps:\n");
    names.subList(1, names.size()).forEach(n -> text.append("  - pop: ").append(n).append("\n"));
    Path recipe = new Desk(folder, 1, 1).recipe(text.toString());
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(recipe)) {
      return composite.measure(Progress.SILENT);
    }
  }

  @Test
  void framesThatFitEachOtherAreQuiet() {
    shot("dusk", 0, 0, PLAIN);
    shot("dark", -2, 10, PLAIN);
    shot("pop", -1, 20, PLAIN, (i, j) -> i >= 30 ? 0 : 40.0 / ((i + 8) * (i + 8)), 0);
    shot("bright", 1, 30, PLAIN);
    assertThat(measured()).isEmpty();
  }

  @Test
  void aCurveIsToldOnceWithItsNumbersAtTheFrame() {
    shot("dusk", 0, 0, Scene.curve(0.5));
    shot("dark", -2, 4, Scene.curve(0.5));
    shot("darker", -3, 8, Scene.curve(0.5));
    List<Problem> told = measured();
    assertThat(told).hasSize(1);
    Problem notice = told.get(0);
    assertThat(notice.isNotice()).isTrue();
    assertThat(notice.place().line()).isBetween(4, 6);
    assertThat(notice.sentence())
        .matches(
            "Between d\\w+ and d\\w+ the exposure ratio changes from [0-9.]+ stops in the darker"
                + " tones \\(around 0\\.[0-9]+ from black 0 to white 1\\) to [0-9.]+ in the brighter"
                + " \\(around 0\\.[0-9]+\\): a tone curve was baked in when they were developed, and"
                + " their light does not add up\\. Develop all frames without one\\. [12] other"
                + " pairs? shows? it too\\.");
  }

  @Test
  void automaticExposureIsToldWithItsNumber() {
    shot("dusk", 0, 0, PLAIN);
    shot("dark", -2, 10, PLAIN, Scene.Flash.NONE, 0.8);
    List<Problem> told = measured();
    assertThat(told).hasSize(1);
    assertThat(told.get(0).path()).isEqualTo("frames/dark");
    assertThat(told.get(0).sentence())
        .startsWith(
            "By the camera's settings dark should be 2.00 stops darker than dusk, but where the two"
                + " agree it is 1.20 stops darker: ");
  }

  @Test
  void automaticExposureShowsBetweenPopsOfOneSetting() {
    shot("dusk", 2, 0, PLAIN);
    // Twenty minutes later, so that nothing can be said against the base.
    shot("pop-1", 0, 1200, PLAIN, (i, j) -> i < 40 ? 0 : 0.2, 0);
    shot("pop-2", 0, 1210, PLAIN, (i, j) -> i >= 20 ? 0 : 0.2, 0.6);
    assertThat(measured())
        .singleElement()
        .matches(p -> p.sentence().contains("pop-2 should be as bright as pop-1"));
  }

  @Test
  void whatTheEveningDoesIsAllowedFor() {
    // A minute of twilight takes up to 0.41 stop; two minutes of it took 0.7 here.
    shot("dusk", 0, 0, PLAIN);
    shot("later", -1, 120, PLAIN, Scene.Flash.NONE, -0.7);
    assertThat(measured()).isEmpty();
  }

  @Test
  void framesWithoutARecordAreComparedWithTheBase() {
    put("dusk", Scene.frame(0, 16, 0, Scene.curve(0.5), Scene.Flash.NONE));
    put("dark", Scene.frame(1, 16, -2, Scene.curve(0.5), Scene.Flash.NONE));
    assertThat(measured()).singleElement().matches(p -> p.path().equals("frames/dark"));
  }

  @Test
  void aDamagedFrameIsToldAndTheOthersAreMeasured() {
    shot("dusk", 0, 0, Scene.curve(0.5));
    shot("dark", -2, 4, Scene.curve(0.5));
    put(
        "torn",
        Scene.frame(3, 16, 0, PLAIN, Scene.Flash.NONE).damage(bytes -> new byte[bytes.length]));
    List<Problem> told = measured();
    assertThat(told).hasSize(2);
    assertThat(told.get(0).sentence())
        .startsWith("Whether torn was developed like the others was not measured: ");
    assertThat(told.get(1).sentence()).contains("tone curve");
  }

  @Test
  void measuringCanBeStopped() {
    shot("dusk", 0, 0, PLAIN);
    shot("dark", -2, 4, PLAIN);
    Path recipe =
        new Desk(folder, 1, 1)
            .recipe(
                "duskply: 1\nbase: dusk\nframes: { dusk: dusk.tif, dark: dark.tif }\n"
                    + "steps: [ { pop: dark } ]\n");
    Progress stopped =
        new Progress() {
          @Override
          public void reached(double share) {}

          @Override
          public boolean cancelled() {
            return true;
          }
        };
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(recipe)) {
      assertThatThrownBy(() -> composite.measure(stopped)).isInstanceOf(CancelledException.class);
    }
  }
}
