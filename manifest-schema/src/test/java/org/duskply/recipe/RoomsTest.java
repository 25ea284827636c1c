package org.duskply.recipe;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Set;

/**
 * Arrows of dependency go down only: the recipe and its reader, the records, the text, the Shapes.
 * A few plain values of the top room (places, sizes, limits) are words that every room may use.
 */
@AnalyzeClasses(
    packages = "org.duskply.recipe",
    importOptions = ImportOption.DoNotIncludeTests.class)
class RoomsTest {
  private static final Set<String> WORDS =
      Set.of(
          "Place",
          "Places",
          "NoPlaces",
          "Problem",
          "Severity",
          "Limits",
          "NamedSpace",
          "Size",
          "FilePaths");

  private static final DescribedPredicate<JavaClass> TOP =
      DescribedPredicate.describe(
          "the top room, but for its plain values",
          type ->
              type.getPackageName().equals("org.duskply.recipe")
                  && !WORDS.contains(type.getBaseComponentType().getSimpleName()));

  private static final DescribedPredicate<JavaClass> PLAIN_VALUES =
      DescribedPredicate.describe(
          "plain values",
          type ->
              type.getPackageName().equals("org.duskply.recipe")
                  && WORDS.contains(type.getSimpleName())
                  && !type.getSimpleName().equals("FilePaths"));

  private static final DescribedPredicate<JavaClass> RECORDS =
      resideInAnyPackage("..recipe.step", "..recipe.mask", "..recipe.adjust", "..recipe.deliver");

  private static final DescribedPredicate<JavaClass> TEXT = resideInAPackage("..recipe.text");
  private static final DescribedPredicate<JavaClass> SHAPE = resideInAPackage("..recipe.shape");

  @ArchTest
  static final ArchRule nothingKnowsTheTop =
      noClasses().that(RECORDS.or(TEXT).or(SHAPE)).should().dependOnClassesThat(TOP);

  /**
   * A record that knew the text would drag tokens and files into everything that builds recipes.
   */
  @ArchTest
  static final ArchRule recordsDoNotKnowTheText =
      noClasses().that(RECORDS).should().dependOnClassesThat(TEXT);

  /** Whoever walks Shapes knows no record by name: a new one needs nothing here. */
  @ArchTest
  static final ArchRule theTextKnowsNoRecord =
      noClasses().that(TEXT).should().dependOnClassesThat(RECORDS);

  @ArchTest
  static final ArchRule shapesKnowNothing =
      noClasses().that(SHAPE).should().dependOnClassesThat(TOP.or(RECORDS).or(TEXT));

  @ArchTest
  static final ArchRule plainValuesKnowOnlyShapes =
      noClasses().that(PLAIN_VALUES).should().dependOnClassesThat(TOP.or(RECORDS).or(TEXT));

  /** A parser can be changed in one place. */
  @ArchTest
  static final ArchRule onlyTheTextKnowsTheParser =
      noClasses()
          .that()
          .resideOutsideOfPackage("..recipe.text")
          .should()
          .dependOnClassesThat(resideInAnyPackage("tools.jackson..", "org.snakeyaml.."));

  @ArchTest
  static final ArchRule nothingIsPrinted =
      noClasses()
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err");

  @ArchTest
  static final ArchRule classesAreFinal =
      classes()
          .that()
          .areNotInterfaces()
          .and()
          .areNotEnums()
          .and()
          .areNotAnonymousClasses()
          .and(
              DescribedPredicate.describe(
                  "are not made to be varied", type -> !type.getSimpleName().equals("PlainWriter")))
          .should()
          .haveModifier(com.tngtech.archunit.core.domain.JavaModifier.FINAL);
}
