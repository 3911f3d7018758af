package fewermore.wording;

import fewermore.text.SourceSpan;
import fewermore.wording.Fact.Amount;
import fewermore.wording.Fact.AskedAmount;
import fewermore.wording.Fact.AskedDifference;
import fewermore.wording.Fact.Compared;
import fewermore.wording.ReadText.Reason;
import fewermore.wording.Who.Form;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Who a pronoun means: the one holder named before that it can mean. Where two can be meant, none is.
 *
 * <p>Facts are taken in reading order; each gives the same fact with names in the place of pronouns.
 */
final class Discourse {
  private static final Map<String, Pronoun> RELATIVES = Map.ofEntries(Map.entry("brother", Pronoun.HE),
      Map.entry("dad", Pronoun.HE), Map.entry("father", Pronoun.HE), Map.entry("uncle", Pronoun.HE),
      Map.entry("grandpa", Pronoun.HE), Map.entry("grandfather", Pronoun.HE), Map.entry("son", Pronoun.HE),
      Map.entry("boy", Pronoun.HE), Map.entry("man", Pronoun.HE), Map.entry("sister", Pronoun.SHE),
      Map.entry("mom", Pronoun.SHE), Map.entry("mother", Pronoun.SHE), Map.entry("aunt", Pronoun.SHE),
      Map.entry("grandma", Pronoun.SHE), Map.entry("grandmother", Pronoun.SHE), Map.entry("daughter", Pronoun.SHE),
      Map.entry("girl", Pronoun.SHE), Map.entry("woman", Pronoun.SHE), Map.entry("friend", Pronoun.NONE),
      Map.entry("cousin", Pronoun.NONE), Map.entry("teacher", Pronoun.NONE), Map.entry("coach", Pronoun.NONE),
      Map.entry("baby", Pronoun.NONE), Map.entry("neighbor", Pronoun.NONE), Map.entry("child", Pronoun.NONE),
      Map.entry("student", Pronoun.NONE), Map.entry("partner", Pronoun.NONE));
  private static final Set<String> NOT_PERSONS = Set.of("team", "room", "class", "grade", "group", "bus", "table",
      "box", "bag", "jar", "lane", "bin", "mount", "lake", "school", "shelf", "day", "week", "game", "page", "round");

  private final Map<String, Mention> mentions = new LinkedHashMap<>();
  private Side lastAmount;
  private Refusal refusal;

  private static final class Mention {
    private final Who who;
    private final boolean person;
    private Pronoun pronoun;

    private Mention(Who who, boolean person, Pronoun pronoun) {
      this.who = who;
      this.person = person;
      this.pronoun = pronoun;
    }
  }

  /** Why the last fact could not be resolved. */
  Refusal refusal() {
    return refusal;
  }

  /** All holders named so far. */
  List<Who> holders() {
    return mentions.values().stream().map(mention -> mention.who).toList();
  }

  /** A holder that a sentence without numbers names. */
  void mention(Who who) {
    mentions.computeIfAbsent(who.key(), key -> new Mention(who, isPerson(who), pronoun(who)));
  }

  /** The fact with names in the place of pronouns, or null when there is a {@link #refusal}. */
  Fact resolve(Fact fact) {
    if (fact instanceof Amount amount) {
      Side side = resolve(amount.side(), null);
      lastAmount = side;
      return side == null ? null : new Amount(side, amount.number());
    }
    if (fact instanceof Fact.Deed deed) {
      Side side = deed.side().who().is(Form.PRONOUN) ? deed.side() : resolve(deed.side(), null);
      return side == null ? null : new Fact.Deed(side);
    }
    if (fact instanceof Compared compared) {
      Side subject = resolve(compared.subject(), named(compared.reference()));
      Side reference = compared.reference() == null || subject == null
          ? null : resolve(compared.reference(), subject);
      boolean failed = subject == null || reference == null && compared.reference() != null;
      return failed ? null
          : new Compared(subject, reference, compared.wording(), compared.number(), compared.word());
    }
    if (fact instanceof AskedAmount asked) {
      Side side = resolve(asked.side(), null);
      return side == null ? null : new AskedAmount(side);
    }
    AskedDifference asked = (AskedDifference) fact;
    Side subject = resolve(asked.subject(), named(asked.reference()));
    Side reference = asked.reference() == null || subject == null ? null : resolve(asked.reference(), subject);
    boolean failed = subject == null || reference == null && asked.reference() != null;
    return failed ? null : new AskedDifference(subject, reference, asked.wording(), asked.word(), asked.goal());
  }

  /** What a pronoun before <i>than</i> can't be: the one named after it, unless places are compared. */
  private static Side named(Side reference) {
    boolean names = reference != null && reference.who() != null && reference.places().isEmpty()
        && !reference.who().is(Form.PRONOUN) && !reference.who().is(Form.POINTER)
        && (reference.who().owner() == null || !reference.who().owner().is(Form.PRONOUN));
    return names ? reference : null;
  }

  private Side resolve(Side side, Side subject) {
    Who who = side.who();
    if (who == null) {
      return side;
    }
    if (who.is(Form.PRONOUN) && who.key().equals("it") && isWeather(side)) {
      return side.with((Who) null);
    }
    if (who.is(Form.POINTER)) {
      if (lastAmount == null) {
        refusal = whichOne(who);
        return null;
      }
      Side filled = side.with((Who) null).filledFrom(lastAmount);
      return lastAmount.who() == null ? filled : filled.with(at(lastAmount.who(), who));
    }
    boolean sameAllowed = !side.places().isEmpty();
    Who resolved = resolve(who, subject == null || sameAllowed ? null : subject.who());
    if (resolved == null) {
      return null;
    }
    if (!resolved.is(Form.GROUP) && !(resolved.is(Form.BARE) && subject != null)) {
      mention(resolved);
    }
    return side.with(resolved);
  }

  /** "It was 50 degrees": nobody has them. */
  private static boolean isWeather(Side side) {
    return side.qualities().contains("warm") || side.thing() != null && side.thing().unit() != null
        && side.thing().unit().dimension() == UnitWords.Dimension.TEMPERATURE;
  }

  private Who resolve(Who who, Who notThis) {
    if (who.is(Form.OWNED)) {
      return owned(who, notThis);
    }
    if (!who.is(Form.PRONOUN)) {
      return who;
    }
    switch (who.key()) {
      case "he", "him":
        return person(who, Pronoun.HE, notThis);
      case "she", "her":
        return person(who, Pronoun.SHE, notThis);
      case "it":
        return thing(who, notThis);
      case "i", "me":
        return Who.of(Form.NAMED, "i", "I", who.at());
      case "we", "us":
        return Who.of(Form.GROUP, "we", "we", who.at());
      case "you":
        return Who.of(Form.NAMED, "you", "you", who.at());
      default:
        return several(who, notThis);
    }
  }

  private Who owned(Who who, Who notThis) {
    Who owner = who.owner();
    List<Who> before = owner.is(Form.PRONOUN) && who.owned() != null ? mentions.values().stream()
        .map(mention -> mention.who).filter(named -> who.owned().equals(named.owned())).toList() : List.of();
    if (before.size() == 1 && Set.of("she", "he").contains(owner.key())) {
      Mention named = mentions.get(before.get(0).owner().key());
      Pronoun kind = owner.key().equals("he") ? Pronoun.HE : Pronoun.SHE;
      if (named != null && named.person && (named.pronoun == kind || named.pronoun == Pronoun.NONE)) {
        return at(before.get(0), who);
      }
    }
    if (owner.is(Form.PRONOUN)) {
      owner = resolve(owner, who.owned() == null && notThis != null && notThis.owner() != null
          ? notThis.owner() : null);
      if (owner == null) {
        return null;
      }
    } else {
      mention(owner);
    }
    String shown = owner.is(Form.GROUP) ? who.shown()
        : (owner.key().equals("i") ? "my" : owner.shown() + "'s") + (who.owned() == null ? "" : " " + who.owned());
    return new Who(Form.OWNED, owner.key() + "'s" + (who.owned() == null ? "" : " " + who.owned()), shown, who.at(),
        owner, who.owned());
  }

  private Who person(Who pronoun, Pronoun kind, Who notThis) {
    List<Mention> meant = new ArrayList<>();
    for (Mention mention : mentions.values()) {
      boolean fits = mention.person && (mention.pronoun == Pronoun.NONE || mention.pronoun == kind);
      if (fits && (notThis == null || !notThis.same(mention.who))) {
        meant.add(mention);
      }
    }
    if (meant.size() != 1) {
      refusal = whichOne(pronoun);
      return null;
    }
    meant.get(0).pronoun = kind;
    return at(meant.get(0).who, pronoun);
  }

  private Who thing(Who pronoun, Who notThis) {
    List<Mention> meant = mentions.values().stream().filter(mention -> !mention.person)
        .filter(mention -> notThis == null || !notThis.same(mention.who)).toList();
    if (meant.size() != 1) {
      refusal = whichOne(pronoun);
      return null;
    }
    return at(meant.get(0).who, pronoun);
  }

  private Who several(Who pronoun, Who notThis) {
    long persons = mentions.values().stream().filter(mention -> mention.person).count();
    List<Mention> meant = mentions.values().stream().filter(mention -> mention.pronoun == Pronoun.THEY)
        .filter(mention -> notThis == null || !notThis.same(mention.who)).toList();
    if (meant.size() == 1 && persons < 2) {
      return at(meant.get(0).who, pronoun);
    }
    return Who.of(Form.GROUP, "they", "they", pronoun.at());
  }

  private static Who at(Who meant, Who pronoun) {
    return new Who(meant.form(), meant.key(), meant.shown(), pronoun.at(), meant.owner(), meant.owned());
  }

  private static Refusal whichOne(Who pronoun) {
    return new Refusal(Reason.WHICH_ONE, pronoun.at(), "I can't tell who or what ‘" + pronoun.shown() + "’ is.",
        "A name was expected, or a pronoun that can mean only one of those named before.", "Use the name.");
  }

  static boolean isPerson(Who who) {
    String last = who.key().substring(who.key().lastIndexOf(' ') + 1);
    if (RELATIVES.containsKey(last)) {
      return true;
    }
    String first = who.key().contains(" ") ? who.key().substring(0, who.key().indexOf(' ')) : who.key();
    return who.is(Form.NAMED) && !who.shown().isEmpty() && Character.isUpperCase(who.shown().charAt(0))
        && !NOT_PERSONS.contains(first) && !NOT_PERSONS.contains(last);
  }

  /** Whether a capital word or words name a person: not "Team Red", not "Monday", not "Grandpa". */
  static boolean isName(String words) {
    String low = words.toLowerCase(Locale.ROOT);
    return isPerson(Who.of(Form.NAMED, low, words, new SourceSpan(0, 0)))
        && !RELATIVES.containsKey(low) && !Phrases.CLOSED.contains(low);
  }

  private static Pronoun pronoun(Who who) {
    String last = who.key().substring(who.key().lastIndexOf(' ') + 1);
    if (RELATIVES.containsKey(last)) {
      return RELATIVES.get(last);
    }
    if (who.is(Form.BARE) || who.is(Form.NAMED) && who.shown().startsWith("the ")
        && EnglishPlurals.one(last).isPresent()) {
      return Pronoun.THEY;
    }
    if (who.key().startsWith("mr")) {
      return who.key().startsWith("mr ") ? Pronoun.HE : Pronoun.SHE;
    }
    if (who.key().startsWith("ms ") || who.key().startsWith("mrs ") || who.key().startsWith("miss ")) {
      return Pronoun.SHE;
    }
    return ChildNames.pronoun(who.shown());
  }
}
