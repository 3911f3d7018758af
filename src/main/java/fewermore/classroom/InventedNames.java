package fewermore.classroom;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * First names for made-up children: short, from many places, no two sounding alike, and none of those that stand in
 * problems, so that a story is never about somebody of the class. They stand for nobody.
 */
final class InventedNames {
  static final List<String> ALL = List.of("Ada", "Alba", "Anouk", "Asha", "Bela", "Bruno", "Cora", "Cyrus", "Daria",
      "Deniz", "Edda", "Elio", "Enzo", "Farah", "Fern", "Gita", "Goran", "Greta", "Hedda", "Hiro", "Ilse", "Ivan",
      "Ivy", "Jamal", "Joss", "Kenji", "Kira", "Lars", "Linh", "Lola", "Malik", "Mirela", "Mina", "Musa", "Neva",
      "Nuru", "Odile", "Otto", "Pia", "Quinn", "Rafi", "Rhea", "Rufus", "Saba", "Selma", "Sven", "Suri", "Tariq",
      "Tilda", "Uma", "Umar", "Vera", "Vito", "Wanda", "Wim", "Xenia", "Yael", "Yuki", "Zahra", "Zora");

  private InventedNames() {}

  /** So many different names, in the order of a class list. */
  static List<String> draw(int children, Random random) {
    List<String> names = new ArrayList<>(ALL);
    Collections.shuffle(names, random);
    return names.stream().limit(children).sorted().toList();
  }
}
