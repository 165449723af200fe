import type { CSSProperties, ReactNode } from "react";
import { STAGE_NAMES, STAGES, type Stage } from "../estimate/index.js";
import { words } from "../words/index.js";

interface SliderProps {
  stage: Stage;
  onStage: (stage: Stage) => void;
}

/** The stage of the job on a slider; the drawn stops lie under a native slider that takes the keys. */
export function StageSlider({ stage, onStage }: SliderProps): ReactNode {
  // The line between the stops runs from the middle of the first to the middle of the last.
  const halfStop = { "--half-stop": `${50 / STAGES.length}%` } as CSSProperties;
  return (
    <div className="stages">
      <label className="name" htmlFor="stage-slider">
        {words.desk.stage}
      </label>
      <Step to={STAGES[STAGES.indexOf(stage) - 1]} way="earlier" onStage={onStage} />
      <div className="stage-track" style={halfStop} data-many={STAGES.length > 5 ? "" : undefined}>
        {STAGES.map((one) => (
          <span
            key={one}
            className={one === stage ? "stage-stop on" : "stage-stop"}
            aria-hidden="true"
          >
            {STAGE_NAMES[one]}
          </span>
        ))}
        <input
          id="stage-slider"
          type="range"
          min={0}
          max={STAGES.length - 1}
          step={1}
          value={STAGES.indexOf(stage)}
          aria-label={words.desk.stageJob}
          aria-valuetext={STAGE_NAMES[stage]}
          onChange={(event) => {
            const chosen = STAGES[Number(event.target.value)];
            if (chosen !== undefined) onStage(chosen);
          }}
        />
      </div>
      <Step to={STAGES[STAGES.indexOf(stage) + 1]} way="later" onStage={onStage} />
    </div>
  );
}

/** One stage back or on, where the names of the stages have no room beside each other. */
function Step(props: {
  to: Stage | undefined;
  way: "earlier" | "later";
  onStage: (stage: Stage) => void;
}): ReactNode {
  const { to, way, onStage } = props;
  const name = to === undefined ? undefined : words.shading[way](STAGE_NAMES[to]);
  return (
    <button
      type="button"
      className="stage-step"
      aria-label={name ?? words.shading[way](words.shading.noStage)}
      title={name}
      disabled={to === undefined}
      onClick={() => {
        if (to !== undefined) onStage(to);
      }}
    >
      <span aria-hidden="true">{way === "earlier" ? "‹" : "›"}</span>
    </button>
  );
}
