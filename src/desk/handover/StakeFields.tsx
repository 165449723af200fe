import { useState } from "react";
import type { ReactNode } from "react";
import type { StakeChoices } from "../../handover/index.js";
import { useHandover } from "../../store/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useSite } from "../useSite.js";
import { StakeMarks } from "./StakeMarks.js";

const says = words.handing.stakes;

interface StakeFieldsProps {
  value: StakeChoices;
  onChange: (value: StakeChoices) => void;
}

/** How the points are set out; all of it may be left as it is. */
export function StakeFields({ value, onChange }: StakeFieldsProps): ReactNode {
  const { site, estimate } = useSite();
  const isKept = useHandover((hand) => hand.areStakesKept);
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="stake-fields" onToggle={(event) => setOpen(event.currentTarget.open)}>
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
      {!isKept && <p className="says">{says.notKept}</p>}
      {isOpen && estimate !== null && <StakeMarks {...{ value, estimate, onChange }} />}
    </details>
  );
}

function without(value: StakeChoices, key: "offset" | "interval"): StakeChoices {
  return Object.fromEntries(Object.entries(value).filter(([name]) => name !== key));
}
