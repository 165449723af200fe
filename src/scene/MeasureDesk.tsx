import { useCallback, useState, type ReactElement } from "react";
import type { PlanPoint } from "../site/index.js";
import { elevation } from "../units/index.js";
import { words } from "../words/index.js";
import { arrowAim } from "./arrowAim.js";
import { toScene } from "./frame.js";
import {
  copyText,
  legTexts,
  measure,
  wholeTexts,
  type Measured,
  type Measuring,
} from "./measuring.js";
import type { SceneContents } from "./sceneTargets.js";
import type { MeasureTool } from "./useMeasuring.js";
import { isOnButton, useToolKeys } from "./useToolKeys.js";

interface MeasureDeskProps {
  tool: MeasureTool;
  state: Measuring;
  contents: SceneContents;
  onEnd: () => void;
}

/** What has been measured so far, and what to do next. */
export function MeasureDesk({ tool, state, contents, onEnd }: MeasureDeskProps): ReactElement {
  useToolKeys(
    useCallback((event) => actOn(event, tool, contents), [tool, contents]),
    onEnd,
  );
  const { site } = contents;
  const { looking } = words;
  const heightAt = heightsOf(contents);
  const measured = measure(state.points, heightAt);
  // The next leg is told before it is set.
  const { hover } = tool;
  const ahead = hover === null ? measured : measure([...state.points, hover], heightAt);
  const here = hover === null ? null : heightAt(hover);
  // A tap beside the ground: what can be done stands alone, since a phone's scene has little room.
  const missed = contents.fixed === true ? looking.noGroundToAdd : looking.noGround;
  const next = !state.isSetting
    ? looking.measured
    : state.points.length === 0
      ? looking.measureFirst
      : looking.measureNext;
  return (
    <div
      className="measure-desk"
      data-testid="measure"
      data-empty={state.points.length === 0 ? "" : undefined}
    >
      <p role="status" className="measure-say">
        {tool.missed ? missed : next}
        {here !== null && ` ${looking.heightHere(elevation.print(here, site.units))}`}
      </p>
      {ahead.legs.length > 0 && <LegTable measured={ahead} units={site.units} />}
      {wholeTexts(ahead, site.units).map((text) => (
        <p key={text} className="measure-whole">
          {text}
        </p>
      ))}
      <div className="measure-buttons">
        {state.points.length > 0 && (
          <button type="button" onClick={() => tool.send({ type: "back" })}>
            {looking.takeBack}
          </button>
        )}
        {measured.legs.length > 0 && <CopyButton text={copyText(measured, site.units)} />}
        {state.isSetting && state.points.length > 1 && (
          <button type="button" className="strong" onClick={() => tool.send({ type: "done" })}>
            {looking.done}
          </button>
        )}
        {!state.isSetting && (
          <button type="button" onClick={() => tool.send({ type: "again" })}>
            {looking.measureAgain}
          </button>
        )}
        <button type="button" data-testid="measure-end" onClick={onEnd}>
          {looking.endMeasure}
        </button>
      </div>
    </div>
  );
}

function LegTable(props: { measured: Measured; units: "us" | "metric" }): ReactElement {
  const { columns, legs } = words.looking;
  return (
    <div className="measure-scroll">
      <table aria-label={legs}>
        <thead>
          <tr>
            <th scope="col">{columns.leg}</th>
            <th scope="col">{columns.plan}</th>
            <th scope="col">{columns.slope}</th>
            <th scope="col">{columns.rise}</th>
            <th scope="col">{columns.percent}</th>
            <th scope="col">{columns.ratio}</th>
            <th scope="col">{columns.bearing}</th>
          </tr>
        </thead>
        <tbody>
          {legTexts(props.measured, props.units).map((leg) => (
            <tr key={leg.name}>
              <th scope="row">{leg.name}</th>
              <td>{leg.plan}</td>
              <td>{leg.slope}</td>
              <td>{leg.rise}</td>
              <td>{leg.percent}</td>
              <td>{leg.ratio}</td>
              <td>{leg.bearing}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Puts the figures on the clipboard, and says whether that worked. */
function CopyButton({ text }: { text: string }): ReactElement {
  const [told, setTold] = useState<{ text: string; word: string } | null>(null);
  const { looking } = words;
  const copy = (): void => {
    const done = (word: string) => () => setTold({ text, word });
    // A page that is not served safely has no clipboard.
    if ("clipboard" in navigator) {
      navigator.clipboard.writeText(text).then(done(looking.copied), done(looking.notCopied));
    } else done(looking.notCopied)();
  };
  return (
    <button type="button" onClick={copy}>
      <span role="status">{told?.text === text ? told.word : looking.copy}</span>
    </button>
  );
}

/** Elevation of the ground at this stage, site coordinates, m; null beyond the survey. */
function heightsOf({ frame, ground }: SceneContents): (at: PlanPoint) => number | null {
  return (at) => {
    const [x, y] = toScene(frame, at);
    const hit = ground.heightAt(x, y);
    return hit === null ? null : hit.z + frame.origin[2];
  };
}

/** Arrows move the mark, Space sets it, Backspace takes back, Enter is done; whether it was one. */
function actOn(event: KeyboardEvent, tool: MeasureTool, { frame, site }: SceneContents): boolean {
  if (!tool.isSetting) return false;
  if (event.key === "Backspace") {
    tool.send({ type: "back" });
    return true;
  }
  const to = arrowAim(event, tool.hover ?? tool.state?.points.at(-1) ?? null, frame, site.units);
  if (to !== null) {
    tool.hoverAt(to);
    return true;
  }
  if (isOnButton(event)) return false;
  if (event.key === " " && tool.hover !== null) tool.tap(tool.hover);
  else if (event.key === "Enter") tool.send({ type: "done" });
  else return false;
  return true;
}
