import type { ReactNode } from "react";
import { changeBranch, without } from "../../site/index.js";
import type { Branch, PressureSystem } from "../../site/index.js";
import { elevation, flow, head, length, size } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { percent } from "../fields/percent.js";
import { plain, whole } from "../fields/plain.js";
import type { PressureResult } from "../parts.js";
import { useEdit, useSite } from "../useSite.js";
import { Rows } from "./Rows.js";
import { useScheme } from "./useFlow.js";
import { Term } from "../book/Term.js";

interface BranchProps {
  system: PressureSystem;
  branch: Branch;
  result: PressureResult["branches"][number] | undefined;
}

type Change = (what: string, change: (branch: Branch) => Branch) => void;

/** One way to a bed: what it gets, and its valve, laterals and holes. */
export function BranchFields({ system, branch, result }: BranchProps): ReactNode {
  const { schemeId, site } = useSite();
  const edit = useEdit();
  const { units } = site;
  const change: Change = (what, make) =>
    edit(words.flowLeaf.changeOf(what, branch.name), (now) =>
      changeBranch(now, schemeId, system.id, branch.id, make),
    );
  const bed = useScheme()?.works.find((work) => work.id === branch.bed);
  const gets =
    result === undefined ? "" : words.flowLeaf.holes(flow.print(result.flow, units), result.holes);
  return (
    <details
      className="working"
      data-branch={branch.id}
      data-bed-at={bed?.kind === "bed" ? bed.at.join(" ") : undefined}
    >
      <summary>
        <span className="text">{branch.name}</span>
        <span className="amount">{gets}</span>
      </summary>
      <div className="inside">
        {result !== undefined && <BranchFigures result={result} />}
        <Valve branch={branch} result={result} change={change} />
        <BranchPipe branch={branch} change={change} />
        <Laterals branch={branch} change={change} />
      </div>
    </details>
  );
}

function BranchFigures({ result }: { result: NonNullable<BranchProps["result"]> }): ReactNode {
  const { units } = useSite().site;
  const share = (value: number): string => percent.print(value, units);
  const rows = [
    [words.flowLeaf.lateralsAt, elevation.print(result.elevation, units)],
    [
      words.flowLeaf.shareFlow,
      words.flowLeaf.wanted(share(result.share), share(result.shareWanted)),
    ],
    [
      words.flowLeaf.headHoles,
      words.flowLeaf.fromTo(
        head.print(result.least, units, { digits: 2 }),
        head.print(result.most, units, { digits: 2 }),
      ),
    ],
    [words.flowLeaf.holesDifferBy, share(result.spread)],
  ] as const;
  return <Rows rows={rows} />;
}

/** K of an open ball valve (recalled, handbooks give 0.05 to 0.3). */
const OPEN_VALVE = 0.2;

/** Part of its share that a bed may miss before the valve is worth a turn. */
const NOTICED = 0.01;

function Valve({
  branch,
  result,
  change,
}: Omit<BranchProps, "system"> & { change: Change }): ReactNode {
  const { valve } = branch;
  const wanted = result?.valve?.wanted ?? null;
  const off = result === undefined ? 0 : Math.abs(result.share / result.shareWanted - 1);
  const set = (open: number): void =>
    change(words.flowLeaf.valveEdit, (now) => ({
      ...now,
      valve: { loss: valve?.loss ?? OPEN_VALVE, open },
    }));
  return (
    <>
      <MeasureField
        label={words.flowLeaf.valveOpen}
        name={`valve-${branch.id}`}
        value={valve?.open}
        usual={words.flowLeaf.noValve}
        measure={percent}
        least={0.01}
        most={1}
        onCommit={set}
        onClear={() => change(words.flowLeaf.valveEdit, (now) => without(now, "valve"))}
      />
      {wanted !== null && off > NOTICED && Math.abs(wanted - (valve?.open ?? 1)) > 0.005 && (
        <div className="tools">
          <button type="button" className="link" onClick={() => set(wanted)}>
            {words.flowLeaf.setWhichGivesBed(Math.round(wanted * 100))}
          </button>
        </div>
      )}
      <MeasureField
        label={words.flowLeaf.shareWanted}
        name={`share-${branch.id}`}
        value={branch.share}
        usual={words.flowLeaf.byItsHoles}
        measure={plain}
        least={0}
        above
        onCommit={(share) => change(words.flowLeaf.shareEdit, (now) => ({ ...now, share }))}
        onClear={() => change(words.flowLeaf.shareEdit, (now) => without(now, "share"))}
      />
    </>
  );
}

function BranchPipe({ branch, change }: { branch: Branch; change: Change }): ReactNode {
  const works = useScheme()?.works ?? [];
  const places = works.filter((work) => work.kind === "bed" || work.kind === "pad");
  return (
    <>
      <ChoiceField
        label={words.flowLeaf.feeds}
        value={branch.bed ?? ""}
        choices={[{ id: "", name: words.flowLeaf.groundMainsEnd }, ...places]}
        onChoose={(id) =>
          change(words.flowLeaf.bedEdit, (now) =>
            id === "" ? without(now, "bed") : { ...now, bed: id },
          )
        }
      />
      <MeasureField
        label={words.flowLeaf.lateralsAboveBase}
        name={`height-${branch.id}`}
        value={branch.height}
        measure={length}
        onCommit={(height) => change(words.flowLeaf.heightEdit, (now) => ({ ...now, height }))}
      />
      <MeasureField
        label={words.flowLeaf.pipeLateralsLong}
        value={branch.length}
        measure={length}
        onCommit={(long) => change(words.flowLeaf.lengthEdit, (now) => ({ ...now, length: long }))}
      />
      <MeasureField
        label={words.flowLeaf.itsBore}
        value={branch.inside}
        measure={size}
        print={{ digits: 2 }}
        least={0}
        above
        onCommit={(inside) => change(words.flowLeaf.boreEdit, (now) => ({ ...now, inside }))}
      />
    </>
  );
}

function Laterals({ branch, change }: { branch: Branch; change: Change }): ReactNode {
  const { laterals } = branch;
  const { holes } = laterals;
  const set = (what: string, next: Partial<Branch["laterals"]>): void =>
    change(what, (now) => ({ ...now, laterals: { ...now.laterals, ...next } }));
  return (
    <>
      <MeasureField
        label={<Term id="lateral">{words.flowLeaf.laterals}</Term>}
        name={`laterals-${branch.id}`}
        value={laterals.count}
        measure={whole}
        most={60}
        onCommit={(count) => set(words.flowLeaf.lateralsEdit, { count })}
      />
      <MeasureField
        label={words.flowLeaf.eachLong}
        value={laterals.length}
        measure={length}
        least={0}
        above
        most={150}
        onCommit={(long) => set(words.flowLeaf.lengthEdit, { length: long })}
      />
      <MeasureField
        label={words.flowLeaf.bore}
        value={laterals.inside}
        measure={size}
        print={{ digits: 2 }}
        least={0}
        above
        onCommit={(inside) => set(words.flowLeaf.boreEdit, { inside })}
      />
      <MeasureField
        label={words.flowLeaf.apart}
        value={laterals.apart}
        measure={length}
        least={0}
        above
        onCommit={(apart) => set(words.flowLeaf.spacingEdit, { apart })}
      />
      <MeasureField
        label={words.flowLeaf.holesWide}
        name={`hole-${branch.id}`}
        value={holes.diameter}
        measure={size}
        print={{ digits: 3 }}
        least={0}
        above
        most={laterals.inside}
        onCommit={(diameter) => set(words.flowLeaf.holesEdit, { holes: { ...holes, diameter } })}
      />
      <MeasureField
        label={words.flowLeaf.holesApart}
        value={holes.apart}
        measure={length}
        least={0.05}
        onCommit={(apart) => set(words.flowLeaf.holesEdit, { holes: { ...holes, apart } })}
      />
      <MeasureField
        label={words.flowLeaf.firstHoleFromManifold}
        value={holes.first}
        measure={length}
        onCommit={(first) => set(words.flowLeaf.holesEdit, { holes: { ...holes, first } })}
      />
    </>
  );
}
