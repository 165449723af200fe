import type { ReactNode } from "react";
import type { Tank } from "../../site/index.js";
import { distance, elevation, length, liquidVolume, mass } from "../../units/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { tankBody, tankChoices } from "../../store/index.js";
import { ElevationField } from "../fields/ElevationField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useTypical } from "../fields/useTypical.js";
import { useSite } from "../useSite.js";
import { BackfillFields, CourseFields } from "./EarthFields.js";
import { BearingField, PlaceFields } from "./PlaceFields.js";
import { TANK_SIDES } from "./sides.js";
import { StripOver } from "./StripFields.js";
import { WallFields } from "./WallFields.js";
import { useChange } from "./useChange.js";
import { Term } from "../book/Term.js";

type Body = Tank["body"];
const SIZES = [
  { key: "length", label: "Length, outside" },
  { key: "width", label: "Width, outside" },
  { key: "height", label: "Height, outside" },
] as const;
const INVERTS = [
  { key: "inlet", label: "Inlet invert" },
  { key: "outlet", label: "Outlet invert" },
  { key: "lowWater", label: "Pump stops at" },
] as const;

function BodyFields({ work }: { work: Tank }): ReactNode {
  const { units } = useSite().site;
  const change = useChange(work);
  const setBody = (what: string, next: Partial<Body>): void =>
    change(what, { body: { ...work.body, ...next } });
  const clear = (what: string, key: keyof Body): void => {
    const kept = Object.entries(work.body).filter(([name]) => name !== key);
    change(what, { body: Object.fromEntries(kept) as Body });
  };
  const known = tankChoices.find(({ id }) => {
    const body = tankBody(id);
    return SIZES.every(({ key }) => body[key] === work.body[key]);
  });
  return (
    <>
      <ChoiceField
        label="Tank"
        name="tank-size"
        value={known?.id ?? "own"}
        choices={[...tankChoices, { id: "own", name: "Sizes as typed" }]}
        onChoose={(id) => id !== "own" && change("tank", { body: tankBody(id) })}
      />
      {SIZES.map(({ key, label }) => (
        <MeasureField
          key={key}
          label={label}
          name={key}
          value={work.body[key]}
          measure={length}
          least={0}
          above
          onCommit={(size) => setBody(key, { [key]: size })}
        />
      ))}
      {INVERTS.map(({ key, label }) => {
        const above = work.body[key];
        return (
          <MeasureField
            key={key}
            label={
              <>
                {label} <small>above underside</small>
              </>
            }
            name={key}
            value={above}
            measure={key === "lowWater" ? length : distance}
            print={{ digits: 2 }}
            onCommit={(height) => setBody(label, { [key]: height })}
            onClear={() => clear(label, key)}
            note={
              above === undefined
                ? undefined
                : `at elevation ${elevation.print(work.base + above, units)}`
            }
          />
        );
      })}
      <MeasureField
        label="Holds"
        name="liquid"
        value={work.body.liquidVolume}
        measure={liquidVolume}
        least={0}
        above
        onCommit={(liquid) => setBody("volume", { liquidVolume: liquid })}
        onClear={() => clear("volume", "liquidVolume")}
      />
      <MeasureField
        label={
          <>
            Weighs <small>empty, from its ticket</small>
          </>
        }
        name="mass"
        value={work.body.emptyMass}
        measure={mass}
        least={0}
        above
        onCommit={(emptyMass) => setBody("weight", { emptyMass })}
        onClear={() => clear("weight", "emptyMass")}
      />
    </>
  );
}

/** A tank and its hole: where, how deep, how it is bedded and filled round, and the tank itself. */
export function TankFields({ work }: { work: Tank }): ReactNode {
  const change = useChange(work);
  return (
    <>
      <ElevationField
        label="Underside"
        name="base"
        value={work.base}
        at={[work.at]}
        onCommit={(base) => change("depth", { base })}
      />
      <MeasureField
        label={
          <>
            <Term id="overdig">Overdig</Term>, each side
          </>
        }
        name="overdig"
        value={work.overdig}
        measure={length}
        onCommit={(overdig) => change("overdig", { overdig })}
        typical={useTypical("overdig")}
      />
      <CourseFields
        term="bedding"
        label="Bedding"
        measured="thick"
        name="bedding"
        {...work.bedding}
        typical={useTypical("bedding")}
        onDepth={(depth) => change("bedding", { bedding: { ...work.bedding, depth } })}
        onMaterial={(material) => change("bedding", { bedding: { ...work.bedding, material } })}
      />
      <WallFields
        walls={work.walls}
        sides={TANK_SIDES}
        typical={useTypical("holeWall")}
        onChange={(walls) => change("walls", { walls })}
      />
      <BackfillFields
        backfill={work.backfill}
        crown={work.crown}
        onBackfill={(backfill) => change("backfill", { backfill })}
        onCrown={(crown) => change("crown", { crown })}
      />
      <h3>Where it lies</h3>
      <PlaceFields of="Centre" at={work.at} onMove={(at) => change("place", { at })} />
      <BearingField value={work.bearing} onTurn={(bearing) => change("bearing", { bearing })} />
      <h3>The tank itself</h3>
      <BodyFields work={work} />
      <StripOver work={work} />
    </>
  );
}
