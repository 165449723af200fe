import type { ReactNode } from "react";
import { changePipe, DEFAULT_PIPE_NAME, withoutAbsent } from "../../site/index.js";
import type { Pipe, PlanPoint } from "../../site/index.js";
import {
  coverToPlace,
  GRAVITY_PIPE,
  namedFor,
  nextPipeName,
  pipeChoices,
  pipeSize,
  PRESSURE_PIPE,
} from "../../store/index.js";
import { distance, length, pipeSlope, size } from "../../units/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { ElevationField } from "../fields/ElevationField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useTypical } from "../fields/useTypical.js";
import { NameField } from "../fields/NameField.js";
import { TypedField } from "../fields/TypedField.js";
import type { Reading } from "../fields/TypedField.js";
import { useEdit, useSite } from "../useSite.js";
import { words } from "../../words/index.js";
import { Term } from "../book/Term.js";

const SERVICES = [
  { id: "gravity", name: words.digLeaf.gravityDrain },
  { id: "pressure", name: words.digLeaf.pressurePumped },
  { id: "conduit", name: words.digLeaf.cableConduit },
] as const;

const says = words.hazards.wiring;
const WIRINGS = (["pvc", "direct", "gfci"] as const).map((id) => ({ id, name: says[id] }));

const GRADES = [
  { id: "inverts", name: words.digLeaf.bothInverts },
  { id: "fall", name: words.digLeaf.startAndFall },
  { id: "cover", name: words.digLeaf.coverAllAlong },
] as const;

type Grade = Pipe["grade"];

/** The same pipe graded another way, keeping where it lies as far as the run tells. */
function regraded(grade: Grade, by: Grade["by"], run: Run | undefined): Grade {
  if (by === "cover") return { by, depth: Math.max(0, run?.cover.least ?? 0.45) };
  const start = grade.by === "cover" ? (run?.start ?? 0) : grade.start;
  const drop = run?.drop ?? 0;
  if (by === "inverts") return { by, start, end: start - drop };
  return { by, start, fall: run === undefined ? 0.02 : run.fall };
}

/** The catalogue pipe of these sizes (within a tenth of a millimetre), or "other". */
function sizeId(pipe: Pipe): string {
  const same = pipeChoices.find(
    (one) =>
      Math.abs(one.inside - pipe.inside) < 1e-4 &&
      Math.abs(one.outside - pipe.outside) < 1e-4 &&
      one.services.includes(pipe.service),
  );
  return same?.id ?? "other";
}

interface Run {
  start: number | undefined;
  drop: number;
  fall: number;
  cover: { least: number };
}

/** How the pipe lies now, from the estimate. */
function useRun(pipe: Pipe): Run | undefined {
  const { estimate } = useSite();
  const check = estimate?.flow.pipes.find((one) => one.id === pipe.id);
  if (check === undefined) return undefined;
  return { ...check, start: check.stations[0]?.invert };
}

function GradeFields(props: {
  grade: Grade;
  path: readonly PlanPoint[];
  onGrade: (grade: Grade) => void;
}): ReactNode {
  const { grade, path, onGrade } = props;
  const [cover, fall] = [useTypical("cover"), useTypical("drainFall")];
  if (grade.by === "cover") {
    return (
      <MeasureField
        label={<Term id="cover">{words.digLeaf.cover}</Term>}
        name="cover"
        value={grade.depth}
        measure={length}
        onCommit={(depth) => onGrade({ by: "cover", depth })}
        typical={cover}
      />
    );
  }
  return (
    <>
      <ElevationField
        label={
          <>
            {words.digLeaf.start} <Term id="invert">{words.digLeaf.invertAfter}</Term>
          </>
        }
        name="start"
        value={grade.start}
        at={path.slice(0, 1)}
        onCommit={(start) => onGrade({ ...grade, start })}
      />
      {grade.by === "inverts" ? (
        <ElevationField
          label={words.digLeaf.endInvert}
          name="end"
          value={grade.end}
          at={path.slice(-1)}
          onCommit={(end) => onGrade({ ...grade, end })}
        />
      ) : (
        <MeasureField
          label={<Term id="fall">{words.digLeaf.fall}</Term>}
          name="fall"
          value={grade.fall}
          measure={pipeSlope}
          onCommit={(fall) => onGrade({ ...grade, fall })}
          typical={fall}
        />
      )}
    </>
  );
}

/** Places of cleanouts, m from the path's start, typed as a list: "2 ft; 40 ft". */
function CleanoutField(props: {
  pipe: Pipe;
  onSet: (cleanouts: number[] | undefined) => void;
}): ReactNode {
  const { units } = useSite().site;
  const { cleanouts } = props.pipe;
  const read = (text: string): Reading<number[] | undefined> => {
    const places: number[] = [];
    for (const part of text.split(/;|, /).filter((one) => one.trim() !== "")) {
      const place = distance.parse(part.trim(), units);
      if (!place.ok) return place;
      places.push(Math.max(0, place.value));
    }
    return { ok: true, value: places.length > 0 ? places.sort((a, b) => a - b) : undefined };
  };
  return (
    <TypedField
      label={words.digLeaf.cleanoutsFromStart}
      name="cleanouts"
      shown={(cleanouts ?? []).map((place) => distance.print(place, units)).join("; ")}
      usual={words.digLeaf.notChecked}
      note={words.digLeaf.placesWithBetweenThem}
      read={read}
      onCommit={props.onSet}
    />
  );
}

/** How a conduit's trench is wired, on which the ground over it depends. */
function WiringField(props: {
  pipe: Pipe;
  onSet: (wiring: NonNullable<Pipe["wiring"]>) => void;
}): ReactNode {
  return (
    <ChoiceField
      label={says.label}
      name="wiring"
      value={props.pipe.wiring ?? "pvc"}
      choices={WIRINGS}
      onChoose={props.onSet}
    />
  );
}

/** The pipe's size from the catalogue, or its bore and outside as typed. */
function SizeFields(props: {
  pipe: Pipe;
  change: (what: string, next: Partial<Pipe>) => void;
}): ReactNode {
  const { pipe, change } = props;
  const { units } = useSite().site;
  return (
    <>
      <ChoiceField
        label={words.digLeaf.size}
        name="pipe-size"
        value={sizeId(pipe)}
        choices={[
          ...namedFor(pipeChoices, units).filter((one) => one.services.includes(pipe.service)),
          { id: "other", name: words.digLeaf.otherAsTyped },
        ]}
        onChoose={(id) => id !== "other" && change(words.digLeaf.sizeEdit, pipeSize(id))}
      />
      <MeasureField
        label={words.digLeaf.boreInside}
        name="inside"
        value={pipe.inside}
        measure={size}
        print={{ digits: 2 }}
        least={0}
        above
        onCommit={(inside) =>
          change(words.digLeaf.boreEdit, {
            inside,
            outside: Math.max(pipe.outside, inside + 0.003),
          })
        }
      />
      <MeasureField
        label={words.digLeaf.outside}
        name="outside"
        value={pipe.outside}
        measure={size}
        print={{ digits: 2 }}
        least={pipe.inside}
        above
        onCommit={(outside) => change(words.digLeaf.outsideEdit, { outside })}
      />
    </>
  );
}

/** One pipe: what it carries, its bore, and how it is graded. */
export function PipeFields(props: {
  pipe: Pipe;
  path: readonly PlanPoint[];
  onRemove: (() => void) | null;
}): ReactNode {
  const { pipe, path, onRemove } = props;
  const { site, schemeId } = useSite();
  const edit = useEdit();
  const run = useRun(pipe);
  const change = (what: string, next: Partial<Pipe>): void =>
    edit(words.digLeaf.ofEdit(what, pipe.name), (site) =>
      changePipe(site, schemeId, pipe.id, (now) => ({ ...now, ...next })),
    );
  const setService = (service: Pipe["service"]): void => {
    // A name that came with the pipe follows what it carries; one that was typed stays.
    const named = DEFAULT_PIPE_NAME.test(pipe.name)
      ? { name: nextPipeName(site, schemeId, service, pipe.id) }
      : {};
    if (service === "gravity") {
      change(words.digLeaf.serviceEdit, {
        service,
        ...named,
        ...pipeSize(GRAVITY_PIPE),
        grade: regraded(pipe.grade, "inverts", run),
      });
    } else {
      change(words.digLeaf.serviceEdit, {
        service,
        ...named,
        ...pipeSize(PRESSURE_PIPE),
        grade: { by: "cover", depth: coverToPlace(site) },
      });
    }
  };
  return (
    <fieldset>
      <legend className="unseen">{words.digLeaf.pipe(pipe.name)}</legend>
      <h3 aria-hidden="true">{pipe.name}</h3>
      <NameField
        label={words.digLeaf.pipeLabel}
        name="pipe-name"
        value={pipe.name}
        onCommit={(name) => change(words.digLeaf.nameEdit, { name })}
      />
      <ChoiceField
        label={words.digLeaf.carriesBy}
        name="service"
        value={pipe.service}
        choices={SERVICES}
        onChoose={setService}
      />
      <SizeFields pipe={pipe} change={change} />
      <ChoiceField
        label={words.digLeaf.gradedBy}
        name="graded"
        value={pipe.grade.by}
        choices={GRADES}
        onChoose={(by) =>
          by !== pipe.grade.by &&
          change(words.digLeaf.gradeEdit, { grade: regraded(pipe.grade, by, run) })
        }
      />
      <GradeFields
        path={path}
        grade={pipe.grade}
        onGrade={(grade) => change(words.digLeaf.gradeEdit, { grade })}
      />
      {pipe.service === "conduit" && (
        <WiringField pipe={pipe} onSet={(wiring) => change(says.change, { wiring })} />
      )}
      {pipe.service === "gravity" && (
        <CleanoutField
          pipe={pipe}
          onSet={(cleanouts) =>
            edit(words.digLeaf.cleanoutsOfEdit(pipe.name), (now) =>
              changePipe(now, schemeId, pipe.id, (was) => withoutAbsent({ ...was, cleanouts })),
            )
          }
        />
      )}
      {onRemove !== null && (
        <div className="tools">
          <button type="button" className="link" onClick={onRemove}>
            {words.digLeaf.removeThisPipe}
          </button>
        </div>
      )}
    </fieldset>
  );
}
