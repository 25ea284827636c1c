package org.duskply.engine.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.duskply.engine.DuskplyException;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The rooms of the engine: arrows of dependency go down the list only, and some doors stay shut.
 */
class RoomsTest {
  private static final String ROOT = "org.duskply.engine";

  /** From what everything stands on to what stands on everything. */
  private static final List<String> ROOMS =
      List.of(
          "pixel", "filter", "colour", "frame", "plan", "svg", "mask", "adjust", "blend", "step",
          "render", "deliver", "", "command");

  private static final JavaClasses ENGINE =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages(ROOT);

  /** The one thing that all rooms know: how the engine says that it cannot go on. */
  private static final DescribedPredicate<JavaClass> COMPLAINT =
      assignableTo(DuskplyException.class);

  private static String packageOf(String room) {
    return room.isEmpty() ? ROOT : ROOT + "." + room;
  }

  @TestFactory
  Stream<DynamicTest> arrowsGoDown() {
    return ROOMS.stream()
        .map(
            room ->
                DynamicTest.dynamicTest(
                    room.isEmpty() ? "engine" : room,
                    () -> {
                      List<String> above = new ArrayList<>();
                      for (String other : ROOMS.subList(ROOMS.indexOf(room) + 1, ROOMS.size())) {
                        above.add(packageOf(other));
                      }
                      if (!above.isEmpty()) {
                        noClasses()
                            .that(resideInAPackage(packageOf(room)).and(not(COMPLAINT)))
                            .should()
                            .dependOnClassesThat(
                                resideInAnyPackage(above.toArray(new String[0]))
                                    .and(not(COMPLAINT)))
                            .check(ENGINE);
                      }
                    }));
  }

  @Test
  void everyPackageIsARoom() {
    for (JavaClass c : ENGINE) {
      String name = c.getPackageName();
      String room = name.equals(ROOT) ? "" : name.substring(ROOT.length() + 1);
      if (!ROOMS.contains(room)) {
        throw new AssertionError(c.getName() + " is in no room of the list");
      }
    }
  }

  @Test
  void pixelsKnowNoRecipesOrFiles() {
    noClasses()
        .that(resideInAnyPackage(packageOf("pixel"), packageOf("filter")))
        .should()
        .dependOnClassesThat(resideInAnyPackage("org.duskply.recipe..", "java.nio.file.."))
        .check(ENGINE);
  }

  @Test
  void inexactMathsStaysOut() {
    // Math may round these as a machine likes; StrictMath may not. fma is exact but slow where it
    // is not built in.
    Set<String> inexact =
        Set.of(
            "pow", "exp", "log", "log10", "log1p", "expm1", "sin", "cos", "tan", "asin", "acos",
            "atan", "atan2", "cbrt", "sinh", "cosh", "tanh", "hypot", "fma");
    noClasses()
        .should()
        .callMethodWhere(
            describe(
                "Math's inexact methods",
                call ->
                    call.getTargetOwner().getName().equals("java.lang.Math")
                        && inexact.contains(call.getTarget().getName())))
        .check(ENGINE);
  }

  @Test
  void coloursAreNotLeftToTheDesktop() {
    noClasses()
        .should()
        .dependOnClassesThat(
            resideInAPackage("java.awt.image")
                .and(describe("convert", c -> c.getSimpleName().endsWith("ConvertOp"))))
        .orShould()
        .callMethodWhere(
            describe(
                "ImageIO.read, which converts as it likes",
                call ->
                    call.getTargetOwner().getName().equals("javax.imageio.ImageIO")
                        && call.getTarget().getName().equals("read")))
        .orShould()
        .callMethodWhere(
            describe(
                "getRGB, which converts to 8-bit sRGB",
                call ->
                    call.getTargetOwner().isAssignableTo(java.awt.image.BufferedImage.class)
                        && call.getTarget().getName().equals("getRGB")))
        .check(ENGINE);
  }

  @Test
  void theLibraryPrintsNothing() {
    noClasses()
        .that(not(resideInAPackage(packageOf("command"))))
        .should()
        .accessTargetWhere(
            describe(
                "System.out or System.err",
                access ->
                    access.getTargetOwner().getName().equals("java.lang.System")
                        && Set.of("out", "err").contains(access.getTarget().getName())))
        .orShould()
        .callMethodWhere(
            describe(
                "printStackTrace", call -> call.getTarget().getName().equals("printStackTrace")))
        .check(ENGINE);
  }

  @Test
  void nothingDependsOnWhereItRuns() {
    noClasses()
        .that(not(resideInAPackage(packageOf("command"))))
        .should()
        .callMethodWhere(
            describe("the default locale, charset or clock", call -> placeBound(call.getTarget())))
        .check(ENGINE);
  }

  private static boolean placeBound(AccessTarget.CodeUnitCallTarget target) {
    String owner = target.getOwner().getName();
    String name = target.getName();
    List<JavaClass> parameters = target.getRawParameterTypes();
    boolean noLocale = parameters.isEmpty() || !parameters.get(0).isEquivalentTo(Locale.class);
    boolean text = owner.equals("java.lang.String");
    return text && Set.of("format", "formatted").contains(name) && noLocale
        || text
            && Set.of("toLowerCase", "toUpperCase", "getBytes").contains(name)
            && parameters.isEmpty()
        || owner.equals("java.lang.System") && Set.of("currentTimeMillis").contains(name)
        || owner.startsWith("java.time") && name.equals("now")
        || owner.equals("java.util.Locale") && name.equals("getDefault");
  }

  @Test
  void framesAreReadThroughPathsAlone() {
    noClasses()
        .that(resideInAPackage(packageOf("frame")))
        .should()
        .dependOnClassesThat(
            describe(
                "java.io.File or a memory map",
                c ->
                    c.getName().equals("java.io.File")
                        || c.getName().equals("java.nio.MappedByteBuffer")))
        .check(ENGINE);
  }
}
