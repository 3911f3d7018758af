package fewermore;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The table of packages in DEVELOPERS.md: what each may use. A package that is not in it fails. */
class PackagesTest {
  private static final JavaClasses ALL =
      new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("fewermore");

  private static final List<String> DOMAIN =
      List.of("text", "story", "equation", "calculation", "wording", "prediction", "problem", "marking");

  private static final Map<String, Set<String>> MAY_USE = new LinkedHashMap<>();

  static {
    MAY_USE.put("text", Set.of());
    MAY_USE.put("story", Set.of());
    MAY_USE.put("equation", Set.of("text"));
    MAY_USE.put("calculation", Set.of("story"));
    MAY_USE.put("wording", Set.of("story", "text"));
    MAY_USE.put("prediction", Set.of("story", "equation", "calculation"));
    MAY_USE.put("problem", Set.of("prediction", "wording", "calculation", "equation", "story", "text"));
    MAY_USE.put("marking", with("problem", MAY_USE.get("problem")));
    MAY_USE.put("json", with("marking", MAY_USE.get("marking")));
    MAY_USE.put("reasoning", MAY_USE.get("json"));
    MAY_USE.put("classroom", with("reasoning", with("json", MAY_USE.get("json"))));
    MAY_USE.put("records", with("classroom", MAY_USE.get("classroom")));
    MAY_USE.put("store", with("classroom", MAY_USE.get("classroom")));
    MAY_USE.put("command", with("records", with("store", MAY_USE.get("store"))));
    MAY_USE.put("web", MAY_USE.get("command"));
  }

  private static Set<String> with(String name, Set<String> others) {
    return Stream.concat(Stream.of(name), others.stream()).collect(Collectors.toSet());
  }

  private static String of(JavaClass type) {
    String name = type.getPackageName();
    return !name.startsWith("fewermore.") ? "" : name.substring("fewermore.".length()).split("\\.")[0];
  }

  @Test
  void aPackageUsesOnlyWhatStandsAboveIt() {
    Set<String> wrong = new TreeSet<>();
    for (JavaClass type : ALL) {
      String from = of(type);
      if (from.isEmpty()) {
        continue;
      }
      type.getDirectDependenciesFromSelf().forEach(arrow -> {
        JavaClass target = arrow.getTargetClass().getBaseComponentType();
        boolean ours = target.getPackageName().equals("fewermore") || target.getPackageName().startsWith("fewermore.");
        String to = of(target);
        if (ours && !to.equals(from) && !MAY_USE.getOrDefault(from, Set.of()).contains(to)) {
          wrong.add(type.getName() + " uses " + target.getName());
        }
      });
    }
    assertEquals(Set.of(), wrong);
  }

  @Test
  void everyPackageStandsInTheTable() {
    Set<String> found = new TreeSet<>();
    ALL.forEach(type -> found.add(of(type)));
    found.remove("");
    Set<String> unknown = new TreeSet<>(found);
    unknown.removeAll(MAY_USE.keySet());
    assertEquals(Set.of(), unknown);
    assertTrue(found.size() >= 10, "the classes were not found: " + found);
  }

  @Test
  void theDomainKnowsNoWebAndNoSql() {
    noClasses().that(resideIn(DOMAIN))
        .should().dependOnClassesThat().resideInAnyPackage(
            "java.sql..", "javax.sql..", "org.jdbi..", "org.flywaydb..", "org.h2..", "io.javalin..", "jakarta..",
            "org.thymeleaf..", "com.fasterxml..")
        .check(ALL);
  }

  @Test
  void sqlIsOnlyInTheStore() {
    noClasses().that(new DescribedPredicate<JavaClass>("outside store") {
      @Override
      public boolean test(JavaClass type) {
        return !of(type).equals("store");
      }
    }).should().dependOnClassesThat().resideInAnyPackage("java.sql..", "javax.sql..", "org.jdbi..", "org.flywaydb..", "org.h2..")
        .check(ALL);
  }

  @Test
  void pagesAndRoutesAreOnlyInTheWeb() {
    noClasses().that(new DescribedPredicate<JavaClass>("outside web") {
      @Override
      public boolean test(JavaClass type) {
        return !of(type).equals("web");
      }
    }).should().dependOnClassesThat().resideInAnyPackage("io.javalin..", "org.thymeleaf..", "jakarta..")
        .check(ALL);
  }

  private static DescribedPredicate<JavaClass> resideIn(List<String> packages) {
    return new DescribedPredicate<>("in the domain") {
      @Override
      public boolean test(JavaClass type) {
        return packages.contains(of(type));
      }
    };
  }
}
