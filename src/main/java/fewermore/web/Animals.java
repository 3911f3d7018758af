package fewermore.web;

import java.util.List;

/** Friendly names for tablets, so that "2 pieces still on Otter" can be said across a room. */
final class Animals {
  private static final List<String> NAMES = List.of(
      "Otter", "Heron", "Badger", "Newt", "Robin", "Hare", "Seal", "Wren", "Mole", "Lynx", "Toad", "Finch", "Moose",
      "Crane", "Beaver", "Gecko", "Puffin", "Bison", "Swift", "Vole", "Quail", "Ibex", "Tapir", "Osprey", "Stoat",
      "Marten", "Plover", "Dormouse", "Kestrel", "Walrus", "Curlew", "Marmot", "Pelican", "Shrew", "Skink", "Egret",
      "Gazelle", "Lemming", "Magpie", "Oryx");

  private Animals() {}

  /** The name of the n-th tablet, from 0; after the list is used up a number follows the name. */
  static String name(long n) {
    String name = NAMES.get((int) (n % NAMES.size()));
    long round = n / NAMES.size();
    return round == 0 ? name : name + " " + (round + 1);
  }

  /** The n-th name from the end, from 0, for tablets that are made up. */
  static String fromTheEnd(int n) {
    int round = n / NAMES.size();
    return name((long) round * NAMES.size() + NAMES.size() - 1 - n % NAMES.size());
  }
}
