package fewermore.wording;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * First names for the children in problems, from many places, as many girls' as boys'. They stand for nobody; a
 * class's own names can be kept out. Chosen to be short, spelled alike in English and Spanish, and far enough apart
 * that two of them in one problem are not mixed up.
 */
public final class ChildNames {
  private static final List<String> GIRLS = List.of("Amara", "Anjali", "Clara", "Dalia", "Esi", "Freya", "Gwen",
      "Halima", "Hana", "Imani", "Juna", "Keiko", "Leila", "Mei", "Nadia", "Noor", "Olena", "Paloma", "Priya", "Rosa",
      "Senait", "Tala", "Thea", "Wren", "Yara", "Zoe");
  private static final List<String> BOYS = List.of("Arlo", "Bao", "Caleb", "Dario", "Diego", "Emil", "Felix", "Hugo",
      "Idris", "Jiro", "Jonah", "Kofi", "Luis", "Marek", "Mateo", "Nico", "Omar", "Oscar", "Pablo", "Ravi", "Samir",
      "Theo", "Tuan", "Waleed", "Yusuf", "Zane");
  private static final List<String> EITHER = List.of("Ari", "Jules", "Kai", "Noa", "Remi", "Rowan", "Sasha", "Shay");
  /** Known when a problem brings them, but not drawn: accented in Spanish, or common in English. From memory. */
  private static final List<String> OTHER_GIRLS = List.of("Ana", "Anna", "Ines", "Lucia", "Maria", "Sofia",
      "Abby", "Abigail", "Ada", "Alice", "Alicia", "Amelia", "Amy", "Anita", "Annie", "Aria", "Ava", "Bella", "Beth",
      "Brianna", "Carla", "Carmen", "Caroline", "Cara", "Charlotte", "Chloe", "Claire", "Daisy", "Dana", "Diana", "Elena",
      "Eliza", "Elizabeth", "Ella", "Ellie", "Emily", "Emma", "Erin", "Eva", "Eve", "Fatima", "Fiona", "Gabriela",
      "Grace", "Hannah", "Heidi", "Helen", "Holly", "Isabel", "Isabella", "Ivy", "Jada", "Jane", "Jasmine", "Jenna",
      "Jenny", "Jill", "Julia", "Kara", "Kate", "Katie", "Kayla", "Kim", "Lara", "Laura", "Layla", "Lena", "Lily",
      "Lina", "Lisa", "Lola", "Lucy", "Luna", "Maggie", "Marta", "Mary", "Maya", "Megan", "Mia", "Mila", "Molly",
      "Naomi", "Natalie", "Nina", "Nora", "Olivia", "Rachel", "Rebecca", "Rita", "Rosie", "Ruby", "Ruth", "Sally",
      "Sara", "Sarah", "Sophia", "Sophie", "Stella", "Susan", "Tara", "Tina", "Vera", "Violet", "Zara");
  private static final List<String> OTHER_BOYS = List.of("Ben", "Beto", "Tomas", "Jose", "Andres", "Martin",
      "Aaron", "Adam", "Aiden", "Alan", "Ali", "Andrew", "Anthony", "Arjun", "Benjamin", "Brian", "Carl", "Carlos",
      "Charlie", "Chen", "Chris", "Cole", "Dan", "Daniel", "David", "Dean", "Dylan", "Eddie", "Eli", "Elias", "Eric",
      "Ethan", "Evan", "Finn", "Frank", "Gabriel", "Gavin", "George", "Henry", "Ian", "Isaac", "Ivan", "Jack", "Jacob",
      "Jake", "James", "Jason", "Javier", "Jeff", "Jim", "Joe", "Joel", "John", "Jon", "Jorge", "Joseph", "Josh",
      "Juan", "Julian", "Kevin", "Kyle", "Leo", "Liam", "Logan", "Lucas", "Luke", "Malik", "Marco", "Marcus", "Mario",
      "Mark", "Mason", "Matt", "Max", "Miguel", "Mike", "Miles", "Nate", "Nathan", "Nick", "Noah", "Oliver", "Omari",
      "Owen", "Paul", "Pedro", "Peter", "Rafael", "Ray", "Rico", "Robert", "Roberto", "Ryan", "Scott",
      "Seth", "Simon", "Steve", "Ted", "Thomas", "Tim", "Tom", "Tony", "Tyler", "Victor", "Will", "William",
      "Wyatt", "Zach");

  private static final List<Holder> ALL = Stream.of(
      GIRLS.stream().map(name -> Holder.child(name, Pronoun.SHE)),
      BOYS.stream().map(name -> Holder.child(name, Pronoun.HE)),
      EITHER.stream().map(name -> Holder.child(name, Pronoun.NONE))).flatMap(names -> names).toList();
  private static final Map<String, String> SOUNDS =
      ALL.stream().map(Holder::english).collect(Collectors.toMap(name -> name, ChildNames::sound));

  /** Two names drawn by chance go together nearly always; where few are left, all pairs are listed instead. */
  private static final int TRIES = 30;

  private ChildNames() {}

  /** All names that may be drawn, in a fixed order. */
  public static List<Holder> all() {
    return ALL;
  }

  /** The pronoun of a name we know; a name we don't know has none, and is said again instead. */
  public static Pronoun pronoun(String name) {
    if (GIRLS.contains(name) || OTHER_GIRLS.contains(name)) {
      return Pronoun.SHE;
    }
    return BOYS.contains(name) || OTHER_BOYS.contains(name) ? Pronoun.HE : Pronoun.NONE;
  }

  /**
   * Two different children, every order of names as likely as every other, so that girls and boys have more equally
   * often. They differ in their first letter and in their last three.
   *
   * @param avoid names not to be used, however they are capitalized, accented or doubled ("Ana" keeps out "Anna")
   * @param used names already used in the same set: not taken while others are left
   * @return empty when too few names are left
   */
  public static Optional<List<Holder>> pair(Random random, Collection<String> avoid, Set<String> used) {
    List<Holder> allowed = allowed(avoid);
    List<Holder> fresh = allowed.stream().filter(child -> !used.contains(child.english())).toList();
    return pair(random, fresh).or(() -> pair(random, allowed));
  }

  /** One child; see {@link #pair}. */
  public static Optional<Holder> one(Random random, Collection<String> avoid, Set<String> used) {
    List<Holder> allowed = allowed(avoid);
    List<Holder> fresh = allowed.stream().filter(child -> !used.contains(child.english())).toList();
    List<Holder> from = fresh.isEmpty() ? allowed : fresh;
    return from.isEmpty() ? Optional.empty() : Optional.of(from.get(random.nextInt(from.size())));
  }

  private static Optional<List<Holder>> pair(Random random, List<Holder> from) {
    List<List<Holder>> pairs = new ArrayList<>();
    for (int tries = 0; tries < TRIES && from.size() > 1; tries++) {
      Holder first = from.get(random.nextInt(from.size()));
      Holder second = from.get(random.nextInt(from.size()));
      if (apart(first.english(), second.english())) {
        return Optional.of(List.of(first, second));
      }
    }
    for (Holder first : from) {
      for (Holder second : from) {
        if (apart(first.english(), second.english())) {
          pairs.add(List.of(first, second));
        }
      }
    }
    return pairs.isEmpty() ? Optional.empty() : Optional.of(pairs.get(random.nextInt(pairs.size())));
  }

  private static boolean apart(String first, String second) {
    return first.charAt(0) != second.charAt(0) && !ending(first).equals(ending(second));
  }

  private static String ending(String name) {
    return name.substring(Math.max(1, name.length() - 3));
  }

  private static List<Holder> allowed(Collection<String> avoid) {
    Set<String> kept = new HashSet<>();
    for (String name : avoid) {
      for (String word : name.split("[^\\p{L}\\p{M}'’]+")) {
        kept.add(sound(word));
      }
    }
    return ALL.stream().filter(child -> !kept.contains(SOUNDS.get(child.english()))).toList();
  }

  private static String sound(String name) {
    return Normalizer.normalize(name, Normalizer.Form.NFD).replaceAll("\\p{M}", "").toLowerCase(Locale.ROOT)
        .replaceAll("(.)\\1", "$1").replaceAll("h$", "");
  }
}
