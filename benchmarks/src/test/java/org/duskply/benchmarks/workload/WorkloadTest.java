package org.duskply.benchmarks.workload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class WorkloadTest {
  private static Workload called(String name) {
    return Workload.called(name).orElseThrow();
  }

  /** Of the polygons of pops, by the shoelace formula, in pixels. */
  private static double meanArea(Workload workload) {
    return workload.layers().stream()
        .filter(Workload.Layer::lighten)
        .mapToDouble(layer -> area(workload.mask(layer)))
        .average()
        .orElseThrow();
  }

  private static double area(List<double[]> corners) {
    double twice = 0;
    for (int i = 0; i < corners.size(); i++) {
      double[] a = corners.get(i);
      double[] b = corners.get((i + 1) % corners.size());
      twice += a[0] * b[1] - b[0] * a[1];
    }
    return Math.abs(twice) / 2;
  }

  @Test
  void whatW24IsMadeOf() {
    Workload w24 = called("W24");
    List<Workload.Layer> layers = w24.layers();
    assertThat(w24.frames()).isEqualTo(24);
    assertThat(layers).hasSize(23).allMatch(layer -> w24.mask(layer).size() == 12);
    assertThat(layers.subList(0, 20)).allMatch(l -> l.lighten() && l.opacity() == 1);
    assertThat(layers.get(20)).matches(l -> !l.lighten() && l.opacity() == 1 && l.sigma() == 1.5);
    assertThat(layers.get(21)).matches(l -> !l.lighten() && l.opacity() == 0.6);
    assertThat(layers.get(22)).matches(l -> l.lighten() && l.sigma() == 8);
  }

  /** Its time is compared with that of W24 at equal area a pop. */
  @Test
  void aPopOfW100ShowsAsMuchAsOneOfW24() {
    double area = meanArea(called("W24"));
    assertThat(called("W100").layers()).filteredOn(Workload.Layer::lighten).hasSize(100);
    assertThat(meanArea(called("W100"))).isCloseTo(area, within(0.02 * area));
  }

  /** Each corner of the picture lies to the same side of each of the polygon's edges. */
  @Test
  void masksOfW24FullCoverThePicture() {
    Workload full = called("W24-full");
    for (Workload.Layer layer : full.layers()) {
      List<double[]> mask = full.mask(layer);
      for (int i = 0; i < mask.size(); i++) {
        double[] a = mask.get(i);
        double[] b = mask.get((i + 1) % mask.size());
        for (double x : new double[] {0, full.width()}) {
          for (double y : new double[] {0, full.height()}) {
            assertThat((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])).isPositive();
          }
        }
      }
    }
  }

  @Test
  void framesThatAreTheSameAreShared() {
    Workload w24 = called("W24");
    Workload full = called("W24-full");
    Workload w100 = called("W100");
    for (int frame = 0; frame < 24; frame++) {
      assertThat(full.shares(frame, w24)).isTrue();
      // Polygons are drawn from the same numbers, but for the size of the sky, which is frame 21.
      assertThat(w100.shares(frame, w24)).isEqualTo(frame != 21);
      assertThat(called("W24-lzw").shares(frame, w24)).isFalse();
      assertThat(called("W24-full-zlib").shares(frame, w24)).isFalse();
      assertThat(called("W24-100MP").shares(frame, w24)).isFalse();
    }
  }
}
