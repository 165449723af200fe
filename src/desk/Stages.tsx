import type { ReactNode } from "react";
import type { Stage } from "../estimate/index.js";
import { useDesk } from "../store/index.js";

const STAGES: readonly { id: Stage; name: string }[] = [
  { id: "found", name: "as found" },
  { id: "dug", name: "dug" },
  { id: "bedded", name: "bedded" },
  { id: "set", name: "set" },
  { id: "backfilled", name: "backfilled" },
];

/** The stage of the job on a slider; the drawn stops lie under a native slider that takes the keys. */
export function Stages(): ReactNode {
  const stage = useDesk((desk) => desk.stage);
  const show = useDesk((desk) => desk.show);
  const index = STAGES.findIndex((one) => one.id === stage);
  return (
    <div className="stages">
      <label className="name" htmlFor="stage-slider">
        Stage
      </label>
      <div className="stage-track">
        {STAGES.map((one) => (
          <span
            key={one.id}
            className={one.id === stage ? "stage-stop on" : "stage-stop"}
            aria-hidden="true"
          >
            {one.name}
          </span>
        ))}
        <input
          id="stage-slider"
          type="range"
          min={0}
          max={STAGES.length - 1}
          step={1}
          value={index}
          aria-label="Stage of the job"
          aria-valuetext={STAGES[index]?.name}
          onChange={(event) => {
            const chosen = STAGES[Number(event.target.value)];
            if (chosen !== undefined) show({ stage: chosen.id });
          }}
        />
      </div>
    </div>
  );
}
