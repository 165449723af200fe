import type { ReactNode } from "react";
import { changeBranch, without } from "../../site/index.js";
import type { Branch, PressureSystem } from "../../site/index.js";
import { elevation, flow, head, length, size } from "../../units/index.js";
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
    edit(`${what} of ${branch.name}`, (now) =>
      changeBranch(now, schemeId, system.id, branch.id, make),
    );
  const bed = useScheme()?.works.find((work) => work.id === branch.bed);
  const gets =
    result === undefined ? "" : `${flow.print(result.flow, units)}, ${result.holes} holes`;
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
    ["Laterals at", elevation.print(result.elevation, units)],
    ["Share of the flow", `${share(result.share)}, wanted ${share(result.shareWanted)}`],
    [
      "Head at its holes",
      `${head.print(result.least, units, { digits: 2 })} to ${head.print(result.most, units, { digits: 2 })}`,
    ],
    ["Holes differ by", share(result.spread)],
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
    change("valve", (now) => ({ ...now, valve: { loss: valve?.loss ?? OPEN_VALVE, open } }));
  return (
    <>
      <MeasureField
        label="Valve open"
        name={`valve-${branch.id}`}
        value={valve?.open}
        usual="no valve"
        measure={percent}
        least={0.01}
        most={1}
        onCommit={set}
        onClear={() => change("valve", (now) => without(now, "valve"))}
      />
      {wanted !== null && off > NOTICED && Math.abs(wanted - (valve?.open ?? 1)) > 0.005 && (
        <div className="tools">
          <button type="button" className="link" onClick={() => set(wanted)}>
            Set it to {Math.round(wanted * 100)}%, which gives this bed its share
          </button>
        </div>
      )}
      <MeasureField
        label="Share wanted"
        name={`share-${branch.id}`}
        value={branch.share}
        usual="by its holes"
        measure={plain}
        least={0}
        above
        onCommit={(share) => change("share", (now) => ({ ...now, share }))}
        onClear={() => change("share", (now) => without(now, "share"))}
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
        label="Feeds"
        value={branch.bed ?? ""}
        choices={[{ id: "", name: "the ground at the main's end" }, ...places]}
        onChoose={(id) =>
          change("bed", (now) => (id === "" ? without(now, "bed") : { ...now, bed: id }))
        }
      />
      <MeasureField
        label="Laterals above its base"
        name={`height-${branch.id}`}
        value={branch.height}
        measure={length}
        onCommit={(height) => change("height", (now) => ({ ...now, height }))}
      />
      <MeasureField
        label="Pipe to the laterals, long"
        value={branch.length}
        measure={length}
        onCommit={(long) => change("length", (now) => ({ ...now, length: long }))}
      />
      <MeasureField
        label="its bore"
        value={branch.inside}
        measure={size}
        print={{ digits: 2 }}
        least={0}
        above
        onCommit={(inside) => change("bore", (now) => ({ ...now, inside }))}
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
        label={<Term id="lateral">Laterals</Term>}
        name={`laterals-${branch.id}`}
        value={laterals.count}
        measure={whole}
        most={60}
        onCommit={(count) => set("laterals", { count })}
      />
      <MeasureField
        label="each long"
        value={laterals.length}
        measure={length}
        least={0}
        above
        most={150}
        onCommit={(long) => set("length", { length: long })}
      />
      <MeasureField
        label="bore"
        value={laterals.inside}
        measure={size}
        print={{ digits: 2 }}
        least={0}
        above
        onCommit={(inside) => set("bore", { inside })}
      />
      <MeasureField
        label="apart"
        value={laterals.apart}
        measure={length}
        least={0}
        above
        onCommit={(apart) => set("spacing", { apart })}
      />
      <MeasureField
        label="Holes, wide"
        name={`hole-${branch.id}`}
        value={holes.diameter}
        measure={size}
        print={{ digits: 3 }}
        least={0}
        above
        most={laterals.inside}
        onCommit={(diameter) => set("holes", { holes: { ...holes, diameter } })}
      />
      <MeasureField
        label="holes apart"
        value={holes.apart}
        measure={length}
        least={0.05}
        onCommit={(apart) => set("holes", { holes: { ...holes, apart } })}
      />
      <MeasureField
        label="first hole from the manifold"
        value={holes.first}
        measure={length}
        onCommit={(first) => set("holes", { holes: { ...holes, first } })}
      />
    </>
  );
}
