package org.duskply.engine.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.junit.jupiter.api.Test;

/** Beyond the border stands the nearest value inside it. */
class EdgeValuesTest {
  @Test
  void everySampleOutsideIsTheNearestInside() {
    Region picture = new Region(2, 3, 7, 6);
    Planes planes = Fields.of(new Region(-3, 0, 9, 9), (x, y) -> Float.NaN);
    planes.copyFrom(Fields.of(picture, (x, y) -> 10 * y + x));
    EdgeValues.extend(planes, picture);
    Planes expected =
        Fields.of(
            planes.area(),
            (x, y) -> 10 * Math.max(3, Math.min(5, y)) + Math.max(2, Math.min(6, x)));
    assertThat(planes.plane(0)).isEqualTo(expected.plane(0));
  }

  @Test
  void aPictureThatReachesBeyondThePlanesLeavesThemAlone() {
    Planes planes = Fields.of(Region.ofSize(4, 4), Fields.noise(1));
    float[] before = planes.plane(0).clone();
    EdgeValues.extend(planes, Region.ofSize(9, 9));
    assertThat(planes.plane(0)).isEqualTo(before);
    assertThatThrownBy(() -> EdgeValues.extend(planes, new Region(9, 9, 12, 12)))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
