import type { MarkChoice, MarkOffer, StakeChoices } from "../../handover/index.js";

/** A mark as one word, for a list in the page. */
export const markKey = (choice: MarkChoice): string => JSON.stringify(choice);

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
  const kept = markKey(other) === markKey(choice) ? same : other;
  return { ...rest, marks: place === 0 ? [choice, kept] : [kept, choice] };
}
