/** Power for a pump: who wires it, what stands beside it, and the way that its cable takes. */
import type { DigResult } from "../dig/index.js";
import type { Finding, Scheme } from "../site/index.js";

/**
 * One note where the scheme has a pump or a pipe under pressure: disconnect, alarm circuit, and the
 * cable's trench where none is drawn. How deep a drawn conduit lies is checked with the pipes.
 */
export function checkPower(
  { flow }: Pick<Scheme, "flow">,
  { pipes }: Pick<DigResult, "pipes">,
): Finding[] {
  const [pumped] = flow?.pressure ?? [];
  const main = pipes.find(({ service }) => service === "pressure");
  const where = pumped?.tank ?? main?.trench;
  if (where === undefined) return [];
  const cable = pipes.some(({ service }) => service === "conduit")
    ? ""
    : " No conduit is drawn: draw the cable's trench too, and have its depth checked.";
  return [
    {
      level: "note",
      code: "power.pump",
      where,
      text: `The pump asks for power: a licensed electrician, a disconnect in sight of it, and the alarm on a circuit of its own.${cable}`,
      source: "NFPA 70 (NEC) 430.102; 25 Pa. Code 73.46",
    },
  ];
}
