import { useEffect, useState } from "react";
import type { ReactNode } from "react";
import { useDesk } from "../store/index.js";
import type { Figures } from "../store/index.js";
import type { Site } from "../site/index.js";
import { earthVolume, money, plainNumber } from "../units/index.js";
import { words } from "../words/index.js";
import { useSite } from "./useSite.js";

/** ms of quiet before a change is read out: keystrokes, nudges and dragging are not. */
const QUIET = 900;

/** What an edit changed, in one line: only figures that print otherwise than before. */
export function changesInWords(
  now: Figures,
  before: Figures | null,
  { units, currency }: Pick<Site, "units" | "currency">,
): string {
  if (before === null) return "";
  const volume = (value: number): string => earthVolume.print(value, units);
  const cost = (value: number): string => money(currency).print(value, units);
  const days = (value: number): string => plainNumber(value, Number.isInteger(value) ? 0 : 1);
  const said = words.forms.stripSaid;
  const parts = [
    [said.cut, volume(now.cut), volume(before.cut)],
    [said.rock, volume(now.rock), volume(before.rock)],
    [said.spoil, volume(now.spoil), volume(before.spoil)],
    [said.days, days(now.days), days(before.days)],
    [said.cost, cost(now.cost.likely), cost(before.cost.likely)],
  ] as const;
  return parts
    .filter(([, is, was]) => is !== was)
    .map(([name, is, was]) => said.change(name, was, is))
    .join("; ");
}

/** Reads the strip's changes out, politely, once an edit is over; nothing while one drags. */
export function StripSaid({ now, before }: { now: Figures; before: Figures | null }): ReactNode {
  const { site } = useSite();
  const dragging = useDesk((desk) => desk.history?.mark !== null);
  const [said, setSaid] = useState("");
  const { units, currency } = site;
  const text = changesInWords(now, before, { units, currency });
  useEffect(() => {
    if (dragging) return undefined;
    const timer = setTimeout(() => setSaid(text), QUIET);
    return () => clearTimeout(timer);
  }, [text, dragging]);
  return (
    <p className="unseen" role="status" data-said>
      {said}
    </p>
  );
}
