import { useMemo, useState } from "react";
import type { ReactNode } from "react";
import { FLATTEST, markOffer } from "../../handover/index.js";
import type { MarkChoice, PairJudged, StakeChoices } from "../../handover/index.js";
import type { Estimate } from "../../estimate/index.js";
import { useDesk } from "../../store/index.js";
import { distance } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { useSite } from "../useSite.js";
import { isOther, markKey, withMark } from "./stakeMarks.js";

const says = words.handing.stakes;

/** The choice that leaves the pair to the program. */
const BEST = "";

const isPair = (a: StakeChoices["marks"], b: StakeChoices["marks"]): boolean =>
  JSON.stringify(a) === JSON.stringify(b);

interface StakeMarksProps {
  value: StakeChoices;
  estimate: Estimate;
  onChange: (value: StakeChoices) => void;
}

/** The two marks that are taped from: which, how well they fix the stakes, and a better pair. */
export function StakeMarks({ value, estimate, onChange }: StakeMarksProps): ReactNode {
  const { site, schemeId } = useSite();
  const selected = useDesk((desk) => desk.selected);
  // The pair that came of a mark picked twice: said as long as that pair is in use.
  const [swapped, setSwapped] = useState<StakeChoices["marks"]>();
  const picked = selected?.kind === "point" ? selected.id : null;
  const offer = useMemo(() => {
    const beside: MarkChoice[] = picked === null ? [] : [{ point: picked }];
    // When it is made plays no part in where stakes stand.
    return markOffer({ site, schemeId, estimate, madeAt: "" }, value, beside);
  }, [site, schemeId, estimate, value, picked]);
  const { used, better, offered } = offer;
  if (used === null) return <p className="says">{says.noMarks}</p>;
  const choices = [
    { id: BEST, name: says.best },
    ...offered.map(({ choice, name }) => ({ id: markKey(choice), name })),
  ];
  const field = (place: 0 | 1, label: string, name: string): ReactNode => (
    <ChoiceField
      {...{ label, name, choices }}
      value={value.marks === undefined ? BEST : markKey(used.pair[place].choice)}
      onChoose={(id) => {
        const found = offered.find(({ choice }) => markKey(choice) === id);
        const next = withMark(value, place, found?.choice ?? null, offer);
        setSwapped(isOther(place, found?.choice ?? null, offer) ? next.marks : undefined);
        onChange(next);
      }}
    />
  );
  return (
    <>
      <p className="says">{says.marksSay}</p>
      {field(0, says.first, "stake-first")}
      {field(1, says.second, "stake-second")}
      <div role="status">
        {swapped !== undefined && isPair(swapped, value.marks) && (
          <p className="says">{says.swapped}</p>
        )}
        <p className="says">{said(says.used, used)}</p>
        {used.flat > 0 && (
          <p className="wrong-note">{says.flat(used.flat, offer.stakes, FLATTEST)}</p>
        )}
        {better !== null && <p className="says">{said(says.better, better)}</p>}
      </div>
      {better !== null && (
        <div className="tools">
          <button
            type="button"
            className="button"
            onClick={() => onChange(withMark(value, 0, null, offer))}
          >
            {says.takeBetter}
          </button>
        </div>
      )}
    </>
  );

  function said(line: typeof says.used, { pair: [a, b], worst, longest }: PairJudged): string {
    return line(a.name, b.name, worst.toFixed(0), distance.print(longest, site.units));
  }
}
