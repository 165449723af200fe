import type { MarkChoice, MarkOffer, StakeChoices } from "../../handover/index.js";

/** A mark as one word, for a list in the page. */
export const markKey = (choice: MarkChoice): string => JSON.stringify(choice);

/** Whether a mark that is picked is the other one of the pair: the two then change places. */
export function isOther(
  place: 0 | 1,
  choice: MarkChoice | null,
  { used }: Pick<MarkOffer, "used">,
): boolean {
  const other = used?.pair[place === 0 ? 1 : 0];
  return choice !== null && other !== undefined && markKey(other.choice) === markKey(choice);
}

/**
 * The choices with one of the two marks picked; null leaves the pair to the program. The other mark
 * stays what it is, picked or chosen by the program; one that is picked twice changes places.
 */
export function withMark(
  value: StakeChoices,
  place: 0 | 1,
  choice: MarkChoice | null,
  { used }: Pick<MarkOffer, "used">,
): StakeChoices {
  const rest: StakeChoices = Object.fromEntries(
    Object.entries(value).filter(([name]) => name !== "marks"),
  );
  if (choice === null || used === null) return rest;
  const [first, second] = used.pair.map((mark) => mark.choice) as [MarkChoice, MarkChoice];
  const [same, other] = place === 0 ? [first, second] : [second, first];
  const kept = isOther(place, choice, { used }) ? same : other;
  return { ...rest, marks: place === 0 ? [choice, kept] : [kept, choice] };
}
