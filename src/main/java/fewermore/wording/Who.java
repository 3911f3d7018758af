package fewermore.wording;

import fewermore.text.SourceSpan;

/**
 * Who or what has an amount, as a text says it.
 *
 * @param key what tells it from others: small letters, without article
 * @param shown as a page names it: "Ines", "the barn", "Ana's rope"
 * @param owner of a thing owned, its owner; else null
 * @param owned what is owned, or null where the noun is left out ("Ana's")
 */
record Who(Form form, String key, String shown, SourceSpan at, Who owner, String owned) {
  enum Form {
    /** A name, or a phrase with an article. */
    NAMED,
    /** Lower-case plural without article: girls, ducks. May be a holder or a thing. */
    BARE,
    /** he, her, it, they. */
    PRONOUN,
    /** That, this, which: the amount just named. */
    POINTER,
    /** Ana's rope, her rope, Ana's. */
    OWNED,
    /** Ana and Ben. */
    GROUP
  }

  static Who of(Form form, String key, String shown, SourceSpan at) {
    return new Who(form, key, shown, at, null, null);
  }

  boolean is(Form one) {
    return form == one;
  }

  /** Whether both mean the same holder; "Ana's" means any one thing of Ana's. */
  boolean same(Who other) {
    if (key.equals(other.key)) {
      return true;
    }
    return owner != null && other.owner != null && owner.same(other.owner) && (owned == null || other.owned == null);
  }
}
