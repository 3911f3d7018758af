package fewermore.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ChildNamesTest {
  private static final int DRAWS = 20_000;

  @Test
  void everyNameIsDrawnAboutEquallyOftenOnBothSides() {
    Map<String, Integer> larger = new HashMap<>();
    Map<String, Integer> smaller = new HashMap<>();
    Random random = new Random(11);
    for (int i = 0; i < DRAWS; i++) {
      List<Holder> pair = ChildNames.pair(random, List.of(), Set.of()).orElseThrow();
      larger.merge(pair.get(0).english(), 1, Integer::sum);
      smaller.merge(pair.get(1).english(), 1, Integer::sum);
    }
    double even = (double) DRAWS / ChildNames.all().size();
    for (Holder child : ChildNames.all()) {
      assertEquals(even, larger.get(child.english()), even * 0.25, child + " larger, seed 11");
      assertEquals(even, smaller.get(child.english()), even * 0.25, child + " smaller, seed 11");
    }
  }

  @Test
  void girlsAndBoysHaveMoreEquallyOften() {
    Random random = new Random(12);
    int girls = 0;
    int boys = 0;
    for (int i = 0; i < DRAWS; i++) {
      Pronoun pronoun = ChildNames.pair(random, List.of(), Set.of()).orElseThrow().get(0).pronoun();
      girls += pronoun == Pronoun.SHE ? 1 : 0;
      boys += pronoun == Pronoun.HE ? 1 : 0;
    }
    assertEquals(girls, boys, DRAWS * 0.03, "seed 12");
  }

  @Test
  void thereAreAsManyGirlsNamesAsBoys() {
    long girls = ChildNames.all().stream().filter(child -> child.pronoun() == Pronoun.SHE).count();
    long boys = ChildNames.all().stream().filter(child -> child.pronoun() == Pronoun.HE).count();
    assertEquals(girls, boys);
    assertTrue(girls >= 26);
    assertEquals(ChildNames.all().size(), new HashSet<>(ChildNames.all()).size());
  }

  @Test
  void noOneIsComparedWithHerself() {
    for (long seed = 0; seed < 2_000; seed++) {
      List<Holder> pair = ChildNames.pair(new Random(seed), List.of(), Set.of()).orElseThrow();
      assertNotEquals(pair.get(0).english().charAt(0), pair.get(1).english().charAt(0), "seed " + seed);
    }
  }

  @Test
  void aClassesOwnNamesAreKeptOutHoweverTheyAreWritten() {
    List<String> own = List.of("ZOÉ", "Nicco", "Mei L.", "priya", "Noor-Amara", "Hannah");
    Set<String> kept = Set.of("Zoe", "Nico", "Mei", "Priya", "Noor", "Amara", "Hana");
    for (long seed = 0; seed < 2_000; seed++) {
      for (Holder child : ChildNames.pair(new Random(seed), own, Set.of()).orElseThrow()) {
        assertFalse(kept.contains(child.english()), child + " seed " + seed);
      }
    }
  }

  @Test
  void whenAllNamesAreTakenThereIsNoPair() {
    List<String> all = ChildNames.all().stream().map(Holder::english).toList();
    assertTrue(ChildNames.pair(new Random(1), all, Set.of()).isEmpty());
    assertTrue(ChildNames.one(new Random(1), all, Set.of()).isEmpty());
  }

  @Test
  void usedNamesComeAgainOnlyWhenNoneIsLeft() {
    Set<String> used = new HashSet<>();
    ChildNames.all().stream().map(Holder::english).filter(name -> !Set.of("Zoe", "Kofi").contains(name))
        .forEach(used::add);
    List<Holder> pair = ChildNames.pair(new Random(5), List.of(), used).orElseThrow();
    assertEquals(Set.of("Zoe", "Kofi"), Set.of(pair.get(0).english(), pair.get(1).english()));
    used.add("Zoe");
    assertTrue(ChildNames.pair(new Random(5), List.of(), used).isPresent());
  }
}
