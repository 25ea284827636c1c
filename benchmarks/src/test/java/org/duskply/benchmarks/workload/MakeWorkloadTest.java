package org.duskply.benchmarks.workload;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.RecipeReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MakeWorkloadTest {
  @TempDir Path work;

  /** Under another name it is the same work, so that all frames are taken from the first. */
  @Test
  void framesThatAreThereAreTaken() throws IOException {
    Workload small = Workload.called("small").orElseThrow();
    Path first = work.resolve("small");
    Files.createDirectories(first.resolve("frames"));
    for (int frame = 0; frame < small.frames(); frame++) {
      Files.writeString(first.resolve(small.file(frame)), "frame " + frame);
    }
    Path second = work.resolve("again");
    MakeWorkload.make(small, second);
    assertThat(second.resolve(small.file(5))).hasContent("frame 5");
    MakeWorkload.make(small, first);
    assertThat(first.resolve(small.file(5))).hasContent("frame 5");
  }

  @Test
  void recipeAndPlanSayTheSame() throws IOException {
    Workload small = Workload.called("small").orElseThrow();
    MakeWorkload make = new MakeWorkload(small, work);
    Recipe recipe = RecipeReader.read("recipe.yaml", make.recipe());
    List<String> plan = make.plan().lines().toList();
    assertThat(plan.get(0)).isEqualTo("size\t600\t400");
    assertThat(plan.get(1)).isEqualTo("base\tframes/000.tif");
    assertThat(plan.get(plan.size() - 2)).isEqualTo("power\t" + Workload.POWER);
    List<String> layers = plan.stream().filter(line -> line.startsWith("layer")).toList();
    assertThat(recipe.steps()).hasSize(layers.size() + 1);
    for (int i = 0; i < layers.size(); i++) {
      String[] fields = layers.get(i).split("\t");
      assertThat(recipe.steps().get(i).opacity()).isEqualTo(Double.parseDouble(fields[3]));
      // A feather is twice the standard deviation.
      assertThat(make.recipe())
          .contains("\"" + fields[5] + "\", feather: " + 2 * Double.parseDouble(fields[4]));
    }
  }
}
