package fewermore.web.child;

import fewermore.marking.Work;

/**
 * The newest work the laptop holds for a problem.
 *
 * @param ageMillis how long ago it was written, by the laptop's clock
 * @param handedIn whether it was handed in as it stands
 */
public record Draft(Work parts, long ageMillis, boolean handedIn) {}
