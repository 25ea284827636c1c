package org.duskply.recipe.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.RecordComponent;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.duskply.recipe.Problem;
import org.duskply.recipe.Reading;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.RecipeReader;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.step.Verb;
import org.duskply.recipe.text.Atlas;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every record of a recipe has a Shape, and every Shape says all that there is to say. */
class ShapeTest {
  static Stream<Shape<?>> shapes() {
    return new Atlas(Recipe.SHAPE).shapes().stream();
  }

  @Test
  void everyPermittedRecordIsMetFromTheRecipeOn() {
    Set<Class<?>> met = new HashSet<>();
    shapes().forEach(shape -> met.add(shape.type()));
    for (Class<?> choice : List.of(Adjustment.class, MaskKind.class, Verb.class)) {
      assertThat(met).containsAll(List.of(choice.getPermittedSubclasses()));
    }
    assertThat(met)
        .containsExactlyInAnyOrderElementsOf(
            new ClassFileImporter()
                    .withImportOption(new ImportOption.DoNotIncludeTests())
                    .importPackages("org.duskply.recipe")
                    .stream()
                    .filter(type -> type.tryGetField("SHAPE").isPresent())
                    .map(JavaClass::reflect)
                    .toList());
  }

  @ParameterizedTest
  @MethodSource("shapes")
  void isThatOfItsOwnClass(Shape<?> shape) {
    assertThat(Shape.of(shape.type())).isSameAs(shape);
  }

  @ParameterizedTest
  @MethodSource("shapes")
  void everyFieldSaysWhatItIs(Shape<?> shape) {
    assertThat(shape.sentence()).endsWith(".");
    for (Field field : shape.fields()) {
      if (field.keyed()) {
        assertThat(field.sentence()).as(field.key()).endsWith(".").hasSizeGreaterThan(8);
        assertThat(field.example()).as(field.key()).isNotBlank();
        assertThat(field.key()).matches("[a-z]+(-[a-z]+)*");
      }
    }
  }

  @ParameterizedTest
  @MethodSource("shapes")
  void everyComponentHasAFieldOfItsType(Shape<?> shape) {
    RecordComponent[] components = shape.type().getRecordComponents();
    assertThat(shape.fields()).hasSize(components.length);
    for (int i = 0; i < components.length; i++) {
      Field field = shape.fields().get(i);
      assertThat(field.component()).isEqualTo(components[i].getName());
      boolean primitive = components[i].getType().isPrimitive();
      boolean number = field.kind() instanceof Kind.Decimal;
      assertThat(number)
          .isEqualTo(Set.of(double.class, Double.class).contains(components[i].getType()));
      // A component that cannot be null must be required or have a default, or say what it follows.
      assertThat(primitive && !field.required() && field.fallback() == null)
          .as(field.key())
          .isEqualTo(primitive && !field.required() && !field.fallbackWords().isEmpty());
    }
  }

  @Test
  void keysOfShapesAreDistinct() {
    // Kinds of masks stand among a mask's own keys, all others under a key of theirs.
    assertThat(shapes().filter(ShapeTest::isMaskKind).map(Shape::key)).doesNotHaveDuplicates();
    assertThat(shapes().filter(s -> !isMaskKind(s)).map(Shape::key)).doesNotHaveDuplicates();
    shapes()
        .forEach(
            shape -> assertThat(new LinkedHashSet<>(shape.keys())).hasSameSizeAs(shape.keys()));
  }

  private static boolean isMaskKind(Shape<?> shape) {
    return MaskKind.class.isAssignableFrom(shape.type());
  }

  /** The example of each record, put where it belongs, is a recipe without fault. */
  @ParameterizedTest
  @MethodSource("shapes")
  void examplesAreSound(Shape<?> shape) {
    String example = shape.example();
    String frames =
        "frames: { dusk: a.tif, pop-hull: b.tif, pop-willow: c.tif, late-sky: d.tif }\n";
    String masks =
        "masks: { hull: {}, sky: {}, pane-1: {}, pane-2: {}, mast: {}, willow: {}, pontoon: {},"
            + " facade: {}, horizon: {} }\n";
    String steps =
        Adjustment.class.isAssignableFrom(shape.type())
            ? "steps: [{ adjust: [{ " + example + " }] }]\n"
            : MaskKind.class.isAssignableFrom(shape.type())
                ? "steps: [{ id: flashes, lay: dusk }, { pop: dusk, mask: { " + example + " } }]\n"
                : shape.key().equals("step") || Verb.class.isAssignableFrom(shape.type())
                    ? "steps: [" + example + "]\n"
                    : "";
    String table =
        switch (shape.key()) {
          case "deliverable" -> "deliverables: { " + example + " }\n";
          case "finish", "metadata" -> example + "\n";
          case "crop" -> "finish: { " + example + " }\n";
          case "alternate" ->
              "steps: [{ id: ember, pop: dusk }, { id: water, pop: dusk }]\nalternates: { "
                  + example
                  + " }\n";
          default -> "";
        };
    if (List.of("frame", "match").contains(shape.key())) {
      frames = "frames: { dusk: a.tif, " + example + " }\n";
    } else if (shape.key().equals("mask")) {
      masks = "masks: { " + example + " }\n";
    }
    Reading reading =
        RecipeReader.strict()
            .check("example.yaml", "duskply: 1\nbase: dusk\n" + frames + masks + steps + table);
    assertThat(reading.problems()).allMatch(Problem::isNotice);
  }

  @ParameterizedTest
  @MethodSource("shapes")
  void takesApartWhatItPutsTogether(Shape<?> shape) {
    if (shape.type() == Contrast.class) {
      Contrast contrast = new Contrast(0.2, 0.3, org.duskply.recipe.adjust.Channel.RGB);
      assertThat(Contrast.SHAPE.build(Contrast.SHAPE.values(contrast))).isEqualTo(contrast);
    }
    assertThat(shape.fields().stream().filter(Field::isPrincipal).count()).isLessThan(2);
  }

  @Test
  void knowsWhatChangesNothing() {
    assertThat(Shape.isIdentityOf(new Exposure(0))).isTrue();
    assertThat(Shape.isIdentityOf(new Exposure(-0.0))).isTrue();
    assertThat(Shape.isIdentityOf(new Exposure(1e-9))).isFalse();
  }

  @Test
  void unitsAreThereForWhoeverExplains() {
    Field stops = Objects.requireNonNull(Exposure.SHAPE.fields().get(0));
    assertThat(stops.unit().symbol()).isEqualTo("stops");
    assertThat(Exposure.SHAPE.get(new Exposure(0.3), stops)).isEqualTo(0.3);
  }

  @Test
  void aShapeThatDoesNotFitItsRecordIsRefused() {
    assertThatThrownBy(
            () -> Shape.mapping(Exposure.class, "exposure", "Light.", Field.number("ev")))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("Exposure: fields must be the record's components, in their order");
  }
}
