package fewermore.wording;

import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Wording;
import fewermore.text.SourceSpan;
import fewermore.wording.Fact.Amount;
import fewermore.wording.Fact.AskedAmount;
import fewermore.wording.Fact.AskedDifference;
import fewermore.wording.Fact.Compared;
import fewermore.wording.ReadText.Reason;
import fewermore.wording.EnglishVerbs.Sense;
import fewermore.wording.Who.Form;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * From the facts of a text to the one comparison they make. The larger and the smaller side must be told apart by
 * something said of both; each known amount must be the only one that can be meant; every other amount must be told
 * apart from both sides.
 */
final class StoryFinder {

  /**
   * The comparison of a text.
   *
   * @param larger all that is said of the larger side
   * @param asked what the question says of what it asks
   * @param used the numbers that are part of it: larger, smaller, difference, null where unknown
   */
  record Found(Side larger, Side smaller, Relation amounts, Role unknown, Wording wording, SourceSpan word, Side asked,
      Token largerNumber, Token smallerNumber, Token differenceNumber) implements Outcome {}

  /** No comparison. */
  record Lost(Refusal refusal) implements Outcome {}

  sealed interface Outcome permits Found, Lost {}

  private final List<Amount> amounts = new ArrayList<>();
  private final List<Compared> compared = new ArrayList<>();
  private final SourceSpan whole;

  private StoryFinder(List<Fact> facts, SourceSpan whole) {
    this.whole = whole;
    for (Fact fact : facts) {
      if (fact instanceof Amount amount) {
        amounts.add(amount);
      } else if (fact instanceof Compared one) {
        compared.add(one);
      }
    }
  }

  /** The comparison in these facts, in which exactly one asks. */
  static Outcome find(List<Fact> facts, Fact asked, SourceSpan question) {
    StoryFinder finder = new StoryFinder(facts, question);
    if (finder.compared.size() > 1) {
      return lost(Reason.TWO_COMPARISONS, finder.compared.get(1).word(), "There are two comparisons here.",
          "One was expected.", "Make two problems of it.");
    }
    Outcome outcome = asked instanceof AskedDifference difference
        ? finder.difference(difference) : finder.amount((AskedAmount) asked);
    return outcome instanceof Found found ? finder.alone(found) : outcome;
  }

  private Outcome difference(AskedDifference asked) {
    if (!compared.isEmpty()) {
      return lost(Reason.TWO_COMPARISONS, compared.get(0).word(),
          "A difference is given and another is asked.", "One comparison was expected.",
          "Give two amounts and ask for their difference, or ask for an amount.");
    }
    if (asked.goal()) {
      return goal(asked);
    }
    Side subject = asked.subject();
    Side reference = asked.reference();
    if (reference == null) {
      return openDifference(asked);
    }
    if (reference.who() == null && subject.who() != null) {
      reference = reference.with(subject.who());
    }
    if (!subject.differs(reference)) {
      return whoHasMore("The question does not say two that differ.");
    }
    Given first = given(subject, reference);
    Given second = given(reference, subject);
    if (first.lost != null || second.lost != null) {
      return first.lost != null ? first.lost : second.lost;
    }
    if (isElsewhere(subject, reference, first.amount) || isElsewhere(reference, subject, second.amount)) {
      return whoHasMore("The question is about another time or place than a number.");
    }
    return between(asked, first.amount, second.amount, subject, reference);
  }

  /** The difference of the only two amounts that can be meant. */
  private Outcome openDifference(AskedDifference asked) {
    Side subject = asked.subject();
    List<Amount> pool = amounts.stream().filter(amount -> amount.side().verb() == null
        || amount.side().verb().sense() != Sense.NEED).filter(amount -> !amount.side().thingDiffers(subject)
        && !amount.side().placeDiffers(subject) && !amount.side().qualityDiffers(subject)).toList();
    if (pool.size() != 2 || !pool.get(0).side().differs(pool.get(1).side())) {
      return pool.size() < 2
          ? tooFew()
          : whoHasMore("The question does not say which two amounts it compares.");
    }
    if (pool.stream().anyMatch(amount -> !saysEnough(amount.side().thing(), subject.thing()))) {
      return whoHasMore("The question asks for a thing that has no number.");
    }
    if (subject.who() == null) {
      return between(asked, pool.get(0), pool.get(1), pool.get(0).side(), pool.get(1).side());
    }
    int first = told(pool.get(0), subject) ? 0 : 1;
    if (told(pool.get(0), subject) == told(pool.get(1), subject)) {
      return whoHasMore("The question does not say which two amounts it compares.");
    }
    return between(asked, pool.get(first), pool.get(1 - first), subject, pool.get(1 - first).side());
  }

  private static boolean told(Amount amount, Side side) {
    return amount.side().who() != null && amount.side().who().same(side.who());
  }

  /** A goal and what is there now: the goal is the larger. */
  private Outcome goal(AskedDifference asked) {
    Side subject = asked.subject();
    List<Amount> goals = amounts.stream().filter(StoryFinder::isGoal)
        .filter(amount -> !amount.side().differs(subject)).toList();
    List<Amount> now = amounts.stream().filter(amount -> !isGoal(amount))
        .filter(amount -> !amount.side().differs(subject) && told(amount, subject)).toList();
    if (goals.size() != 1 || now.size() != 1) {
      return goals.size() + now.size() < 2 ? tooFew() : twoForOne(goals.size() > 1 ? goals.get(1) : now.get(1));
    }
    Amount larger = goals.get(0);
    Amount smaller = now.get(0);
    if (larger.side().thing() != null && smaller.side().thing() != null
        && !larger.side().thing().same(smaller.side().thing())) {
      return whoHasMore("The goal and what is there are not of the same thing.");
    }
    int difference = larger.number().value() - smaller.number().value();
    if (difference <= 0) {
      return contradiction(larger.number(), "The goal is not above what is there.");
    }
    Side goal = larger.side().with((Who) null);
    return new Found(goal.filledFrom(smaller.side().with((Who) null)), smaller.side().filledFrom(subject),
        new Relation(larger.number().value(), smaller.number().value(), difference), Role.DIFFERENCE, Wording.MORE,
        asked.word(), subject, larger.number(), smaller.number(), null);
  }

  private static boolean isGoal(Amount amount) {
    return amount.side().verb() != null && amount.side().verb().sense() == Sense.NEED;
  }

  private Outcome between(AskedDifference asked, Amount first, Amount second, Side subject, Side reference) {
    if (!goTogether(first.side(), second.side()) || !goTogether(first.side(), subject)
        || !goTogether(second.side(), subject)) {
      return changed(second);
    }
    Side.CountedThing one = first.side().thing();
    Side.CountedThing other = second.side().thing();
    if (one != null && other != null && !one.same(other) && one.mayBe(other)) {
      return whoHasMore("One amount counts " + one.noun().many() + ", the other " + other.noun().many() + ".");
    }
    if (one != null && other != null && one.unit() != null && other.unit() != null && !one.same(other)) {
      return twoUnits(second);
    }
    if (!saysEnough(one, subject.thing()) || !saysEnough(other, reference.thing())) {
      return whoHasMore("The question asks for a thing that has no number.");
    }
    int firstValue = first.number().value();
    int secondValue = second.number().value();
    if (firstValue == secondValue) {
      return lost(Reason.EQUAL, second.number().at(), "Both amounts are " + firstValue + ".",
          "Two different amounts were expected.", "Change one number.");
    }
    boolean firstLarger = firstValue > secondValue;
    if (asked.wording() != Wording.DIFFERENCE && firstLarger != (asked.wording() == Wording.MORE)) {
      return contradiction(first.number(), "The question says who has "
          + (asked.wording() == Wording.MORE ? "more" : "fewer") + ", and the numbers say the other one has.");
    }
    Amount larger = firstLarger ? first : second;
    Amount smaller = firstLarger ? second : first;
    Side largerSide = larger.side().filledFrom(firstLarger ? subject : reference);
    Side smallerSide = smaller.side().filledFrom(firstLarger ? reference : subject);
    return new Found(largerSide, smallerSide,
        new Relation(larger.number().value(), smaller.number().value(),
            larger.number().value() - smaller.number().value()),
        Role.DIFFERENCE, asked.wording(), asked.word(), asked.subject(), larger.number(), smaller.number(), null);
  }

  private Outcome amount(AskedAmount asked) {
    Side question = asked.side();
    if (question.who() != null && question.who().is(Form.GROUP)) {
      return lost(Reason.TOTAL, question.who().at(), "The question asks for several together.",
          "A comparison has one larger and one smaller amount, and their difference.",
          "Ask for one of the three alone.");
    }
    if (compared.isEmpty()) {
      return lost(Reason.NO_COMPARISON, whole, "No sentence says how many more or fewer.",
          "A comparison was expected, or a question for a difference.", "Say how many more or fewer one has.");
    }
    Compared one = withThing(compared.get(0), question);
    Side subject = one.subject();
    Side reference = opened(one, question);
    if (reference == null) {
      return withoutThan(one);
    }
    if (reference.who() == null && subject.who() != null) {
      reference = reference.with(subject.who());
    }
    if (!subject.differs(reference)) {
      return lost(Reason.WHO_HAS_MORE, one.word(), "I can't tell who has more.",
          "Two that differ were expected, one before ‘than’ and one after it.", "Name both.");
    }
    boolean asksSubject = meant(question, subject, reference);
    boolean asksReference = meant(question, reference, subject);
    if (asksSubject == asksReference) {
      return lost(Reason.ANOTHER_QUESTION, whole, "The question does not ask for one of the two that are compared.",
          "It was expected to ask for the amount that has no number.", "Ask for that amount by its name.");
    }
    Side target = asksSubject ? subject : reference;
    Side known = asksSubject ? reference : subject;
    if (!goTogether(question, target) || !goTogether(question, known)) {
      return lost(Reason.CHANGE, whole, "The question asks with another verb than the story tells.",
          "The same sort of amount was expected.", "Use the same verb.");
    }
    if (!saysEnough(target.thing(), question.thing())) {
      return lost(Reason.ANOTHER_QUESTION, whole, "The question asks for a thing that is not compared.",
          "The thing compared was expected.", "Ask for it by the same words.");
    }
    for (Amount amount : amounts) {
      if (meant(amount.side(), target, known) && !isGoal(amount)) {
        return lost(Reason.NOTHING_TO_FIND, amount.number().at(), "The amount that is asked for has a number.",
            "It was expected to be unknown.", "Ask for the other amount, or leave this number out.");
      }
    }
    Given given = given(known, target);
    return given.lost != null ? given.lost : apart(one, given.amount, target, known, question, asksSubject);
  }

  /** A comparison whose noun is left out counts what is asked, or else what the only other amount counts. */
  private Compared withThing(Compared one, Side question) {
    Side.CountedThing thing = question.thing() != null || amounts.size() != 1
        ? question.thing() : amounts.get(0).side().thing();
    boolean kinds = one.reference() != null && one.reference().thing() != null;
    if (one.subject().thing() != null || thing == null || kinds || !question.qualities().isEmpty()) {
      return one;
    }
    Side reference = one.reference() == null || one.reference().thing() != null
        ? one.reference() : one.reference().with(thing);
    return new Compared(one.subject().with(thing), reference, one.wording(), one.number(), one.word());
  }

  private Outcome apart(Compared one, Amount given, Side target, Side known, Side question, boolean asksSubject) {
    if (!goTogether(given.side(), known) || !goTogether(given.side(), target)
        || !goTogether(given.side(), question)) {
      return changed(given);
    }
    Side.CountedThing counted = given.side().thing();
    if (!saysEnough(counted, known.thing())) {
      return whoHasMore("The amount counts " + counted.noun().many() + ", the comparison "
          + known.thing().noun().many() + ".");
    }
    if (isElsewhere(known, target, given)) {
      return whoHasMore("The comparison is with another time or place than the number's.");
    }
    int value = given.number().value();
    int difference = one.number().value();
    if (difference == 0) {
      return lost(Reason.EQUAL, one.number().at(), "The difference is 0.", "Two different amounts were expected.",
          "Change this number.");
    }
    boolean targetLarger = asksSubject == (one.wording() == Wording.MORE);
    if (!targetLarger && value < difference) {
      return contradiction(one.number(), "The difference is above the larger amount.");
    }
    if (targetLarger && value + difference > EnglishTokens.LARGEST) {
      return lost(Reason.TOO_LARGE, given.number().at(), "The larger amount is too large.",
          "Numbers up to " + EnglishTokens.LARGEST + " were expected.", "Use smaller numbers.");
    }
    Side knownSide = given.side().filledFrom(known);
    Side targetSide = filled(target, question);
    return targetLarger
        ? new Found(targetSide, knownSide, new Relation(value + difference, value, difference), Role.LARGER,
            one.wording(), one.word(), question, null, given.number(), one.number())
        : new Found(knownSide, targetSide, new Relation(value, value - difference, difference), Role.SMALLER,
            one.wording(), one.word(), question, given.number(), null, one.number());
  }

  private static Side filled(Side target, Side question) {
    Side filled = target.filledFrom(question);
    return target.who() == null || question.who() == null ? filled : filled.with(target.who());
  }

  /**
   * The reference. Where it is left out it is the one other holder with an amount: after a contest, and after every
   * comparing word but <i>more</i>, which without <i>than</i> is mostly an amount that is added.
   */
  private Side opened(Compared one, Side question) {
    Side reference = one.reference();
    boolean more = one.wording() == Wording.MORE && one.subject().qualities().isEmpty();
    if (reference == null && more) {
      return null;
    }
    boolean contest = reference == null || one.subject().verb() == null && reference.who() == null && reference.places().isEmpty()
        && one.subject().who() != null && (reference.thing() == null || one.subject().thing() != null
        && reference.thing().same(one.subject().thing()));
    if (!contest) {
      return reference;
    }
    List<Amount> others = amounts.stream().filter(amount -> amount.side().whoDiffers(one.subject())
        && (one.subject().thing() == null || !amount.side().thingDiffers(one.subject()))).toList();
    boolean won = reference != null && others.isEmpty() && question.whoDiffers(one.subject());
    if (won) {
      return reference.with(question.who());
    }
    if (others.size() != 1 || one.subject().who() == null) {
      return null;
    }
    Side open = reference == null
        ? Side.of(null, one.subject().thing(), List.of(), null).measured(one.subject().qualities(), Set.of())
        : reference;
    return open.with(others.get(0).side().who());
  }

  private Outcome withoutThan(Compared one) {
    return lost(Reason.MORE_WITHOUT_THAN, one.word(),
        "It is not said more or fewer than who or what; it may be an amount that is added.",
        "‘than’ and the other one were expected.", "Say it in full, with ‘than’ and a name.");
  }

  /** Whether a description means this side and not the other: it agrees with one and differs from the other. */
  private static boolean meant(Side description, Side side, Side other) {
    return !description.differs(side) && description.differs(other);
  }

  /** The only amount that can be meant by a side, or why there is none; one of the two is null. */
  private record Given(Amount amount, Outcome lost) {}

  private Given given(Side side, Side other) {
    List<Amount> meant = amounts.stream().filter(amount -> !isGoal(amount))
        .filter(amount -> meant(amount.side(), side, other)).toList();
    if (meant.size() == 1) {
      return new Given(meant.get(0), null);
    }
    if (meant.size() > 1) {
      return new Given(null, twoForOne(meant.get(1)));
    }
    for (Amount amount : amounts) {
      Side.CountedThing has = amount.side().thing();
      if (has != null && has.unit() != null && side.thing() != null && side.thing().unit() != null
          && !has.same(side.thing()) && has.unit().dimension() == side.thing().unit().dimension()
          && !amount.side().whoDiffers(side)) {
        return new Given(null, twoUnits(amount));
      }
      if (amount.side().who() != null && amount.side().who().is(Form.GROUP) && !amount.side().thingDiffers(side)) {
        return new Given(null, lost(Reason.TOTAL, amount.number().at(), "An amount of several together is here.",
            "One larger and one smaller amount were expected.", "Give an amount of one alone."));
      }
    }
    return new Given(null, tooFew());
  }

  /** Every other amount must be told apart from both sides. */
  private Outcome alone(Found found) {
    for (Amount amount : amounts) {
      Token number = amount.number();
      if (number == found.largerNumber || number == found.smallerNumber) {
        continue;
      }
      Side side = amount.side();
      if (!side.differs(found.larger) || !side.differs(found.smaller)) {
        return twoForOne(amount);
      }
      boolean sameThing = side.thing() == null || found.larger.thing() == null
          || !side.thingDiffers(found.larger) || !side.thingDiffers(found.smaller);
      if (sameThing && side.who() != null && side.who().is(Form.GROUP)) {
        return lost(Reason.TOTAL, number.at(), "An amount of several together is here.",
            "One larger and one smaller amount were expected.", "Leave it out.");
      }
      if (sameThing && side.who() != null && found.larger.who() != null && Discourse.isPerson(found.larger.who())
          && !Discourse.isPerson(side.who())) {
        return twoForOne(amount);
      }
    }
    for (Amount amount : amounts) {
      for (Side.Place place : amount.side().places()) {
        if (isHolder(place, found.larger) || isHolder(place, found.smaller)) {
          return changed(amount);
        }
      }
    }
    return found;
  }

  private static boolean isHolder(Side.Place place, Side side) {
    return side.who() != null && (place.key().equals(side.who().key())
        || place.key().startsWith(side.who().key() + "'s")) && side.places().stream().noneMatch(place::equals);
  }

  /** "than Ben was last year", where Ben's number is not said to be of last year. */
  private static boolean isElsewhere(Side side, Side other, Amount given) {
    boolean own = !side.places().isEmpty() && side.places().stream().noneMatch(place ->
        other.places().stream().anyMatch(each -> each.key().equals(place.key())));
    boolean only = own && !other.placeDiffers(side);
    List<String> told = given.side().places().stream().map(Side.Place::key).toList();
    return only && given.side().who() != null
        && side.places().stream().anyMatch(place -> !told.contains(place.key()));
  }

  private static boolean saysEnough(Side.CountedThing said, Side.CountedThing asked) {
    return said == null || asked == null || said.saysAllOf(asked);
  }

  private static boolean goTogether(Side one, Side other) {
    return one.verb() == null || other.verb() == null || one.verb().goesWith(other.verb());
  }

  private Outcome tooFew() {
    return lost(Reason.TOO_FEW_NUMBERS, whole, "A number of the comparison is missing.",
        "Two of the three numbers were expected, each with who or what it belongs to.",
        "Say both, with the same names and words.");
  }

  private static Outcome twoForOne(Amount amount) {
    return lost(Reason.TWO_NUMBERS_FOR_ONE, amount.number().at(),
        "Two numbers may stand for the same amount.", "One number for each amount was expected.",
        "Leave one out, or say what tells them apart.");
  }

  private static Outcome twoUnits(Amount amount) {
    return lost(Reason.TWO_UNITS, amount.number().at(), "Two units are compared.",
        "One unit was expected.", "Give both amounts in the same unit.");
  }

  private static Outcome changed(Amount amount) {
    return lost(Reason.CHANGE, amount.number().at(), "This may be an amount that changes another.",
        "Two amounts of the same sort were expected.", "Use the same verb for both amounts.");
  }

  private Outcome contradiction(Token number, String found) {
    return lost(Reason.CONTRADICTION, number.at(), found, "Numbers that fit the sentences were expected.",
        "Change a number, or who has more.");
  }

  private Outcome whoHasMore(String found) {
    return lost(Reason.WHO_HAS_MORE, whole, found, "Two amounts told apart by their names were expected.",
        "Name both sides in the question.");
  }

  private static Outcome lost(Reason reason, SourceSpan at, String found, String expected, String advice) {
    return new Lost(new Refusal(reason, at, found, expected, advice));
  }
}
