import { useMemo, type ReactElement } from "react";
import type { ScenePoint } from "../frame.js";
import { InkLines } from "../InkLines.js";
import { craneParts, diggerParts } from "../machineShapes.js";
import type { MachineAtWork } from "../machinesAtWork.js";
import type { ScenePalette } from "../palette.js";
import { EdgedMesh } from "./EdgedMesh.js";

/** A digger or crane as a plain mass at its work. */
export function MachineModel(props: {
  machine: MachineAtWork;
  palette: ScenePalette;
}): ReactElement {
  const { machine, palette } = props;
  const parts = useMemo(
    () =>
      machine.kind === "digger"
        ? diggerParts(machine.sizes, machine.tip)
        : craneParts(machine.sizes, machine.swing),
    [machine],
  );
  const place = { position: machine.at, turn: machine.turn, ink: palette.ink, width: 1 };
  // A boom that nothing entered lets lift from here is drawn as what is wrong.
  const isWrong = machine.kind === "crane" && !machine.works;
  return (
    <group>
      <EdgedMesh geometry={parts.body} colour={palette.machine} {...place} />
      <EdgedMesh geometry={parts.dark} colour={palette.machineDark} {...place} />
      <EdgedMesh
        geometry={parts.arm}
        colour={isWrong ? palette.stake : palette.machineArm}
        {...place}
      />
      {machine.kind === "crane" && <Hook {...machine} ink={palette.ink} />}
    </group>
  );
}

function Hook(props: {
  hook: readonly [ScenePoint, ScenePoint];
  slings: readonly ScenePoint[];
  ink: string;
}): ReactElement {
  const { hook, slings, ink } = props;
  const lines = useMemo(
    () =>
      Float32Array.from([...hook.flat(), ...slings.flatMap((corner) => [...hook[1], ...corner])]),
    [hook, slings],
  );
  return <InkLines segments={lines} colour={ink} width={1.4} />;
}
