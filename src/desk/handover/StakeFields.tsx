import type { ReactNode } from "react";
import type { StakeChoices } from "../../handover/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useSite } from "../useSite.js";
import { withMark } from "./stakeMarks.js";

const says = words.handing.stakes;

interface StakeFieldsProps {
  value: StakeChoices;
  onChange: (value: StakeChoices) => void;
}

/** The choice that leaves the pair to the program. */
const BEST = "";

/** How the points are set out; all of it may be left as it is. */
export function StakeFields({ value, onChange }: StakeFieldsProps): ReactNode {
  const { site } = useSite();
  const choices = [
    { id: BEST, name: says.best },
    ...site.survey.points.map(({ id, note }) => ({ id, name: says.point(id, note ?? "") })),
  ];
  const mark = (place: 0 | 1): string => {
    const chosen = value.marks?.[place];
    return chosen !== undefined && "point" in chosen ? chosen.point : BEST;
  };
  const choose = (place: 0 | 1, id: string): void =>
    onChange(withMark(value, place, id === BEST ? null : id, site));
  return (
    <details className="stake-fields">
      <summary>{says.title}</summary>
      <MeasureField
        label={says.offset}
        name="stake-offset"
        measure={length}
        value={value.offset}
        least={0.1}
        most={30}
        usual={site.units === "us" ? 3 * 0.3048 : 1}
        onCommit={(offset) => onChange({ ...value, offset })}
        onClear={() => onChange(without(value, "offset"))}
      />
      <MeasureField
        label={says.interval}
        name="stake-interval"
        measure={length}
        value={value.interval}
        least={0.5}
        most={100}
        usual={site.units === "us" ? 10 * 0.3048 : 3}
        onCommit={(interval) => onChange({ ...value, interval })}
        onClear={() => onChange(without(value, "interval"))}
      />
      <ChoiceField
        label={says.first}
        name="stake-first"
        value={mark(0)}
        choices={choices}
        onChoose={(id) => choose(0, id)}
      />
      <ChoiceField
        label={says.second}
        name="stake-second"
        value={mark(1)}
        choices={choices}
        onChoose={(id) => choose(1, id)}
      />
    </details>
  );
}

function without(value: StakeChoices, key: "offset" | "interval"): StakeChoices {
  return Object.fromEntries(Object.entries(value).filter(([name]) => name !== key));
}
