import { useMemo, useState } from "react";
import type { ReactNode } from "react";
import { layLotLine, lotLinesOf, type Limit, type PlanPoint } from "../../site/index.js";
import {
  balanced,
  COMPASS_RULE,
  lotCorners,
  readCourses,
  ringArea,
  runTraverse,
  sidesOf,
  type Course,
  type SurveyUnit,
  type Traverse,
} from "../../survey/index.js";
import { useDesk } from "../../store/index.js";
import { area, distance, land, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { outlinePath } from "../late/lotOutline.js";
import { SURVEY_UNITS } from "../start/PointTable.js";
import { useEdit, useSite } from "../useSite.js";
import { useLimitDrafts } from "./drafts.js";
import { LotSides } from "./LotSides.js";
import { PasteBox } from "./PasteBox.js";
import { sameLine } from "./sameLine.js";

const says = words.limits.lot;

/** m: what is off by less comes from rounding of what was typed. */
const CLOSES = 0.01;
/** An error larger than one in this asks whether a side was misread. Common practice, no source. */
const COARSE = 100;
const MILLIMETRES = 1000;
const PICTURE = { width: 240, height: 150 };

/** Lot lines typed as bearings and lengths, run from a start, their closure shown. */
export function LotLines(): ReactNode {
  const { site } = useSite();
  const draft = useLimitDrafts();
  const unit = draft.unit ?? (site.units === "us" ? "ft" : "m");
  const { courses, problems } = useMemo(
    () => readCourses(draft.courses, unit),
    [draft.courses, unit],
  );
  const set = useLimitDrafts.setState;
  const [east, north] = draft.start;
  return (
    <details className="working" data-testid="lot-lines">
      <summary>
        <span className="text">{says.title}</span>
      </summary>
      <div className="inside">
        <p className="says">{says.says}</p>
        <PasteBox
          label={says.text}
          example={says.example}
          text={draft.courses}
          onChange={(courses) => set({ courses })}
          problems={problems.map(({ line, text, what, mend }) =>
            says.problem(line, text, what, mend),
          )}
        />
        <ChoiceField<SurveyUnit>
          label={says.unit}
          name="course-unit"
          value={unit}
          choices={SURVEY_UNITS}
          onChoose={(chosen) => set({ unit: chosen })}
        />
        <MeasureField
          label={says.east}
          name="course-east"
          value={east}
          measure={distance}
          onCommit={(value) => set({ start: [value, north] })}
        />
        <MeasureField
          label={says.north}
          name="course-north"
          value={north}
          measure={distance}
          onCommit={(value) => set({ start: [east, value] })}
        />
        {courses.length > 1 && <Run courses={courses} start={[east, north]} />}
      </div>
    </details>
  );
}

/** The sides as they run: closure, area, and the way into the site. */
function Run({ courses, start }: { courses: readonly Course[]; start: PlanPoint }): ReactNode {
  const wants = useLimitDrafts((draft) => draft.balance);
  const [x, y] = start;
  const run = useMemo(() => runTraverse(courses, [x, y]), [courses, x, y]);
  const isOff = run.error.distance > CLOSES;
  const taken = wants ? balanced(courses, run) : run;
  const tooFar = run.oneIn !== null && run.oneIn < COARSE;
  const closes = !isOff || wants;
  return (
    <>
      <Picture run={taken} />
      <RunTable {...{ courses, run, taken, closes }} />
      {tooFar && <p className="wrong-note">{says.large}</p>}
      {run.oneIn !== null && (
        <>
          <label className="tick">
            <input
              type="checkbox"
              checked={wants}
              onChange={(event) => useLimitDrafts.setState({ balance: event.target.checked })}
            />
            {says.balance}
          </label>
          <p className="soft">{says.balanceSays(COMPASS_RULE)}</p>
        </>
      )}
      {!closes && <p className="soft">{says.open}</p>}
      <UseRun taken={taken} closes={closes} />
    </>
  );
}

function Picture({ run }: { run: Traverse }): ReactNode {
  // The path closes itself; a lot that is open shows the missing side all the same.
  const path = outlinePath(lotCorners(run), PICTURE);
  return (
    <svg
      className="lot-picture"
      viewBox={`-6 -6 ${PICTURE.width + 12} ${PICTURE.height + 12}`}
      role="img"
      aria-label={says.picture}
    >
      <path d={path} />
    </svg>
  );
}

function RunTable(props: {
  courses: readonly Course[];
  run: Traverse;
  taken: Traverse;
  closes: boolean;
}): ReactNode {
  const { courses, run, taken, closes } = props;
  const { units } = useSite().site;
  const oneIn = run.oneIn === null ? "" : plainNumber(Math.round(run.oneIn), 0);
  return (
    <>
      <LotSides courses={courses} adjusted={taken === run ? null : sidesOf(taken)} />
      <table className="table">
        <tbody>
          <tr>
            <th scope="row">{says.around}</th>
            <td>{distance.print(run.length, units)}</td>
          </tr>
          <tr>
            <th scope="row">{says.error}</th>
            <td data-figure="closure">
              {run.oneIn === null
                ? says.noError
                : says.errorIs(distance.print(run.error.distance, units, { digits: 3 }), oneIn)}
            </td>
          </tr>
          {closes && (
            <tr>
              <th scope="row">{taken === run ? says.area : says.areaBalanced}</th>
              <td data-figure="lot-area">{areaWords(taken, units)}</td>
            </tr>
          )}
        </tbody>
      </table>
    </>
  );
}

/** The area in plain units and as land is sold. */
function areaWords(taken: Traverse, units: "us" | "metric"): string {
  const square = ringArea(lotCorners(taken));
  return `${area.print(square, units)} (${land.print(square, units)})`;
}

/** The sides become the lot's line: in place of one that is there, or as one more. */
function UseRun({ taken, closes }: { taken: Traverse; closes: boolean }): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const there = lotLinesOf(site);
  const [chosen, setChosen] = useState<string | null>(null);
  const old = there.find(({ id }) => id === chosen) ?? there[0] ?? null;
  const path = (closes ? ringOf(taken) : taken.places).map(([x, y]): PlanPoint => [
    Math.round(x * MILLIMETRES) / MILLIMETRES,
    Math.round(y * MILLIMETRES) / MILLIMETRES,
  ]);
  const lay = (replaced: string | null): void => {
    edit(says.step, (now) => layLotLine(now, { path, closed: closes, name: says.name }, replaced));
    const sides = closes ? path.length : path.length - 1;
    useDesk.getState().tell(replaced === null ? says.made(sides) : says.replaced(sides));
  };
  const nameOf = ({ name }: Limit): string => name ?? says.name;
  const made = sameLine(there, path, closes);
  if (made !== null) return <p className="soft">{says.isLine(nameOf(made))}</p>;
  return (
    <>
      {there.length > 1 && old !== null && (
        <ChoiceField
          label={says.which}
          name="lot-line-replaced"
          value={old.id}
          choices={there.map((one) => ({ id: one.id, name: nameOf(one) }))}
          onChoose={setChosen}
        />
      )}
      {old !== null && <p className="soft">{says.takesPlace(nameOf(old))}</p>}
      <div className="tools">
        <button
          type="button"
          className="button"
          disabled={old?.locked === true}
          onClick={() => lay(old?.id ?? null)}
        >
          {says.use}
        </button>
        {old !== null && (
          <button type="button" className="link" onClick={() => lay(null)}>
            {says.another}
          </button>
        )}
      </div>
    </>
  );
}

/** The corners without the last place, which is the first again. */
function ringOf({ places }: Traverse): readonly PlanPoint[] {
  return places.length > 3 ? places.slice(0, -1) : places;
}
