import { useId } from "react";
import type { ReactNode } from "react";
import { catalogueMaterials } from "../../site/index.js";
import type { MaterialKind } from "../../site/index.js";
import { length } from "../../units/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { TypedField } from "../fields/TypedField.js";
import { thicknessOf } from "./draft.js";
import type { DraftProps } from "./newSite.js";

function materials(kinds: readonly MaterialKind[]): { id: string; name: string }[] {
  return [...catalogueMaterials().values()].filter((one) => kinds.includes(one.kind));
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
      note={
        draft[key].trim() === ""
          ? "Wanted: how thick the probe found it; 0 where there was none."
          : undefined
      }
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
        Not known yet: take it all as soil
      </label>
      <label className="tick">
        <input
          type="radio"
          name={group}
          checked={draft.under === "probe"}
          onChange={() => set({ under: "probe" })}
        />
        One probe so far: topsoil, soil, then rock
      </label>
      {draft.under === "probe" && thickness("topsoil", "Topsoil, thick")}
      {draft.under === "probe" && thickness("soil", "Soil, thick")}
      <ChoiceField
        label="The soil digs as"
        value={draft.soilMaterial}
        choices={materials(["soil"])}
        onChoose={(soilMaterial) => set({ soilMaterial })}
      />
      {draft.under === "probe" && (
        <ChoiceField
          label="The rock digs as"
          value={draft.rockMaterial}
          choices={materials(["rippable", "rock"])}
          onChoose={(rockMaterial) => set({ rockMaterial })}
        />
      )}
    </>
  );
}
