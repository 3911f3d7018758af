package fewermore.wording;

import fewermore.text.SourceSpan;
import fewermore.wording.ReadText.Reason;

/** Why and where a text is not taken, in three whole sentences. */
record Refusal(Reason reason, SourceSpan at, String found, String expected, String advice) {}
