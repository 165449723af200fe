import { useId } from "react";
import type { ReactNode } from "react";
import { catalogueMaterials } from "../../site/index.js";
import type { MaterialKind } from "../../site/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { TypedField } from "../fields/TypedField.js";
import { readingOf, thicknessOf } from "./draft.js";
import type { DraftProps } from "./newSite.js";

function materials(kinds: readonly MaterialKind[]): { id: string; name: string }[] {
  return [...catalogueMaterials().values()].filter((one) => kinds.includes(one.kind));
}

/** How the rock digs, which nothing may guess, and where the probe was dug. */
function RockAndPlace({ draft, set }: Pick<DraftProps, "draft" | "set">): ReactNode {
  const choose = { id: "", name: words.startPage.choose };
  const rocks = materials(["rippable", "rock"]);
  const place = (key: "probeEast" | "probeNorth", label: string): ReactNode => (
    <TypedField
      label={label}
      name={key}
      shown={draft[key]}
      usual={words.startPage.middleOfPoints}
      read={(text) => {
        const reading = readingOf(text, draft.unit);
        if (typeof reading === "object" && reading !== null)
          return { ok: false, text: reading.wrong };
        return { ok: true, value: text.trim() };
      }}
      onCommit={(text) => set({ [key]: text })}
    />
  );
  return (
    <>
      <ChoiceField
        label={words.startPage.rockDigs}
        value={draft.rockMaterial}
        choices={draft.rockMaterial === "" ? [choose, ...rocks] : rocks}
        onChoose={(rockMaterial) => set({ rockMaterial })}
      />
      <p className="soft">{words.startPage.whichRock}</p>
      {place("probeEast", words.startPage.probeEast)}
      {place("probeNorth", words.startPage.probeNorth)}
    </>
  );
}

/** What lies under the ground: not known yet, or what one probe found. */
export function GroundUnder({ draft, set }: DraftProps): ReactNode {
  const group = useId();
  const thickness = (key: "topsoil" | "soil", label: string): ReactNode => (
    <TypedField
      label={label}
      name={`new-${key}`}
      shown={draft[key]}
      read={(text) => {
        if (text.trim() === "") return { ok: true, value: "" };
        const parsed = thicknessOf(text, draft.units);
        if (!parsed.ok) return parsed;
        return { ok: true, value: length.print(parsed.value, draft.units) };
      }}
      onCommit={(text) => set({ [key]: text })}
      note={draft[key].trim() === "" ? words.startPage.wantedHowThickProbe : undefined}
    />
  );
  return (
    <>
      <label className="tick">
        <input
          type="radio"
          name={group}
          checked={draft.under === "unknown"}
          onChange={() => set({ under: "unknown" })}
        />
        {words.startPage.notKnownYetTake}
      </label>
      <label className="tick">
        <input
          type="radio"
          name={group}
          checked={draft.under === "probe"}
          onChange={() => set({ under: "probe" })}
        />
        {words.startPage.oneProbeFarTopsoil}
      </label>
      {draft.under === "probe" && thickness("topsoil", words.startPage.topsoilThick)}
      {draft.under === "probe" && thickness("soil", words.startPage.soilThick)}
      <ChoiceField
        label={words.startPage.soilDigs}
        value={draft.soilMaterial}
        choices={materials(["soil"])}
        onChoose={(soilMaterial) => set({ soilMaterial })}
      />
      {draft.under === "probe" && <RockAndPlace draft={draft} set={set} />}
    </>
  );
}
