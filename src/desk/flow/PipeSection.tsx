import type { ReactNode } from "react";
import { words } from "../../words/index.js";
import type { Mend, PipeCheck } from "../parts.js";
import { changePipe, changeWork, findWork } from "../../site/index.js";
import type { Pipe, Site } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { elevation, flow, length, pipeSlope, size, velocity } from "../../units/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { Findings, findingsAt } from "../Findings.js";
import { useEdit, useSite } from "../useSite.js";
import { QuantityWorking, Working } from "../Working.js";
import { withFall } from "./raised.js";
import { Profile } from "./Profile.js";
import { Term } from "../book/Term.js";

const SERVICE_WORDS = {
  gravity: words.flowLeaf.byGravity,
  pressure: "pumped",
  conduit: words.flowLeaf.cableConduit,
};

/** The pipe's grade with its ends moved as a mend says; null where the grade cannot follow. */
function movedGrade(pipe: Pipe, check: PipeCheck, start: number, end: number): Pipe | null {
  const { grade } = pipe;
  const even = Math.abs(start - end) < 1e-9;
  if (grade.by === "inverts") {
    return { ...pipe, grade: { ...grade, start: grade.start + start, end: grade.end + end } };
  }
  if (grade.by === "fall") {
    const fall = grade.fall + (start - end) / check.length;
    return { ...pipe, grade: { ...grade, start: grade.start + start, fall } };
  }
  return even ? { ...pipe, grade: { ...grade, depth: grade.depth - start } } : null;
}

/** The site with a mend made: the pipe's ends moved, and the tank with them; null for mere words. */
function mended(site: Site, schemeId: string, check: PipeCheck, mend: Mend): Site | null {
  const { move, tank } = mend;
  if (move === undefined && tank === undefined) return null;
  const trench = findWork(site, schemeId, check.trench);
  const pipe =
    trench?.kind === "trench" ? trench.pipes.find((one) => one.id === check.id) : undefined;
  if (pipe === undefined) return null;
  const next =
    mend.kind === "even-grade"
      ? evenPipe(pipe, check, move)
      : movedGrade(pipe, check, move?.start ?? 0, move?.end ?? 0);
  if (next === null) return null;
  const piped = changePipe(site, schemeId, check.id, () => next);
  if (tank === undefined) return piped;
  return changeWork(piped, schemeId, tank.id, (work) =>
    work.kind === "tank" ? { ...work, base: work.base + tank.up } : work,
  );
}

/** One straight grade between the pipe's ends, moved. */
function evenPipe(pipe: Pipe, check: PipeCheck, move: Mend["move"]): Pipe | null {
  const [first, last] = [check.stations[0], check.stations[check.stations.length - 1]];
  if (first === undefined || last === undefined) return null;
  const start = first.invert + (move?.start ?? 0);
  return { ...pipe, grade: { by: "inverts", start, end: last.invert + (move?.end ?? 0) } };
}

function Mends({ check }: { check: PipeCheck }): ReactNode {
  const { site, schemeId } = useSite();
  const edit = useEdit();
  if (check.mends.length === 0) return null;
  return (
    <ul className="mends" aria-label={words.flowLeaf.whatWouldMend(check.name)}>
      {check.mends.map((mend) => {
        const can = mended(site, schemeId, check, mend) !== null;
        const said = mend.text.charAt(0).toUpperCase() + mend.text.slice(1);
        return (
          <li key={mend.kind}>
            {!can ? (
              said
            ) : (
              <button
                type="button"
                className="link"
                onClick={() =>
                  edit(
                    words.flowLeaf.mendEdit(check.name),
                    (now) => mended(now, schemeId, check, mend) ?? now,
                  )
                }
              >
                {said}
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}

/** A fall in percent and, on a US site, as it is set with a level: "2.1% (¼ in per ft)". */
function fallWords(fall: number, units: Site["units"]): string {
  const percent = pipeSlope.print(fall, units);
  return units === "us"
    ? `${percent} (${pipeSlope.print(fall, units, { slope: "per-foot" })})`
    : percent;
}

/** Sets the far end from the near end and a chosen fall; not for a pipe that follows the ground. */
function FallField({ check }: { check: PipeCheck }): ReactNode {
  const { site, schemeId } = useSite();
  const edit = useEdit();
  const trench = findWork(site, schemeId, check.trench);
  const pipe =
    trench?.kind === "trench" ? trench.pipes.find((one) => one.id === check.id) : undefined;
  if (check.service !== "gravity" || pipe === undefined || pipe.grade.by === "cover") return null;
  return (
    <MeasureField
      label={words.flowLeaf.makeItFall}
      name={`fall-${check.id}`}
      value={check.fall}
      measure={pipeSlope}
      onCommit={(fall) =>
        edit(words.flowLeaf.fallOfEdit(check.name), (now) =>
          changePipe(now, schemeId, check.id, (was) => withFall(was, fall, check.length) ?? was),
        )
      }
    />
  );
}

/** What a drain carries full, and how it runs at the design peak. */
function Carries(props: {
  check: PipeCheck;
  carries: NonNullable<PipeCheck["carries"]>;
}): ReactNode {
  const { carries } = props;
  const { units } = useSite().site;
  const { peak } = carries;
  return (
    <>
      <Working text={words.flowLeaf.carriesFull} amount={flow.print(carries.full.value, units)}>
        <QuantityWorking quantity={carries.full} decimal />
        <QuantityWorking quantity={carries.velocity} decimal />
      </Working>
      {peak !== null && (
        <table className="table">
          <tbody>
            <tr>
              <th scope="row">{words.flowLeaf.designPeak(flow.print(peak.flow, units))}</th>
              <td>
                {peak.over
                  ? words.flowLeaf.doesNotFit
                  : words.flowLeaf.deep(
                      Math.round(100 * peak.depthRatio),
                      velocity.print(peak.velocity, units),
                    )}
              </td>
            </tr>
          </tbody>
        </table>
      )}
    </>
  );
}

/** One pipe: its profile, fall, cover, what it carries, and what would mend it. */
export function PipeSection({ check }: { check: PipeCheck }): ReactNode {
  const { site, estimate } = useSite();
  const select = useDesk((desk) => desk.select);
  const { units } = site;
  const cover = (depth: number): string =>
    Number.isFinite(depth)
      ? depth < 0
        ? words.flowLeaf.aboveGround(length.print(-depth, units))
        : length.print(depth, units)
      : words.flowLeaf.beyondTheSurvey;
  return (
    <section aria-label={check.name} data-pipe={check.id} data-fall={check.fall}>
      <h2>
        {check.name}
        <span className={`verdict ${check.verdict === "runs" ? "runs" : "wrong"}`}>
          {check.verdict}
        </span>
      </h2>
      <Profile check={check} />
      <table className="table">
        <tbody>
          <tr>
            <th scope="row">{words.flowLeaf.runsLabel}</th>
            <td>
              {words.flowLeaf.sizeAndBore(
                SERVICE_WORDS[check.service],
                size.print(check.inside, units, { digits: 1 }),
              )}
            </td>
          </tr>
          <tr>
            <th scope="row">{words.flowLeaf.lengthInPlan}</th>
            <td>{length.print(check.length, units)}</td>
          </tr>
          <tr>
            <th scope="row">
              <Term id="fall">{check.fall < 0 ? words.flowLeaf.rises : words.flowLeaf.falls}</Term>
            </th>
            <td>
              <strong>{pipeSlope.print(Math.abs(check.fall), units)}</strong>
              {check.leastFall !== null &&
                words.flowLeaf.atLeast(
                  check.fall < 0 ? words.flowLeaf.shouldFall : words.flowLeaf.usually,
                  fallWords(check.leastFall.value, units),
                )}
            </td>
          </tr>
          <tr>
            <th scope="row">
              <Term id="invert">{words.flowLeaf.inverts}</Term>
            </th>
            <td>
              {elevation.print(check.stations[0]?.invert ?? 0, units)} →{" "}
              {elevation.print(check.stations.at(-1)?.invert ?? 0, units)}
            </td>
          </tr>
          <tr>
            <th scope="row">
              <Term id="cover">{words.flowLeaf.cover}</Term>
            </th>
            <td>{words.flowLeaf.fromTo(cover(check.cover.least), cover(check.cover.most))}</td>
          </tr>
          {check.rock !== null && check.rock > 0 && (
            <tr>
              <th scope="row">{words.flowLeaf.rockTrench}</th>
              <td>{words.flowLeaf.whatDug(Math.round(100 * check.rock))}</td>
            </tr>
          )}
          {check.crossings.map((one) => (
            <tr key={`${one.pipe} ${one.station}`}>
              <th scope="row">{words.flowLeaf.crossesAt(length.print(one.station, units))}</th>
              <td>
                {one.above ? words.flowLeaf.over : words.flowLeaf.under} {one.name},{" "}
                {one.clear < 0
                  ? words.flowLeaf.throughIt
                  : words.flowLeaf.clear(length.print(one.clear, units))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {check.carries !== null && <Carries check={check} carries={check.carries} />}
      {check.leastFall !== null && <p className="rule-source">{check.leastFall.source}</p>}
      {check.field && <p className="rule-source">{words.joined.fieldPipe}</p>}
      <FallField check={check} />
      <Mends check={check} />
      <Findings findings={findingsAt(estimate?.findings, [check.id])} />
      <div className="tools">
        <button
          type="button"
          className="link"
          onClick={() => {
            select({ kind: "work", id: check.trench });
            useDesk.getState().show({ leaf: "dig" });
          }}
        >
          {words.flowLeaf.changeTrenchInverts}
        </button>
      </div>
    </section>
  );
}
