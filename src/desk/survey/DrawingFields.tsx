import type { ReactNode } from "react";
import { contourChoices, contourStep } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import { useLooks, type Looks } from "../../store/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { useSite } from "../useSite.js";

/** How the ground is drawn: m between contours, and where heights are written. */
export function DrawingFields(): ReactNode {
  const { site } = useSite();
  const { contourStep: step, heights, look } = useLooks();
  const said = words.shading;
  const choices = contourChoices(site);
  const chosen = choices.find((one) => step !== null && Math.abs(one - step) < 1e-6);
  const auto = said.asRelief(printed(suited(site), site));
  return (
    <>
      <h2>
        {said.drawing} <span className="aside">{said.drawingAside}</span>
      </h2>
      <ChoiceField
        label={said.contours}
        name="contour-step"
        value={chosen === undefined ? "auto" : String(chosen)}
        choices={[
          { id: "auto", name: auto },
          ...choices.map((one) => ({ id: String(one), name: printed(one, site) })),
        ]}
        onChoose={(id) => look({ contourStep: id === "auto" ? null : Number(id) })}
      />
      <ChoiceField<Looks["heights"]>
        label={said.heights}
        name="heights"
        value={heights}
        choices={[
          { id: "leaf", name: said.heightsLeaf },
          { id: "on", name: said.heightsOn },
          { id: "off", name: said.heightsOff },
        ]}
        onChoose={(chosenHeights) => look({ heights: chosenHeights })}
      />
    </>
  );
}

function suited({ survey, units }: Site): number {
  // Not Math.min(...): a large survey has more points than a call may have arguments.
  const [low, high] = survey.points.reduce(
    ([least, most], { z }) => [Math.min(least, z), Math.max(most, z)],
    [Infinity, -Infinity],
  );
  return contourStep(high - low, units);
}

function printed(step: number, { units }: Site): string {
  return length.print(step, units, { digits: units === "us" && step > 0.3 ? 0 : 1 });
}
