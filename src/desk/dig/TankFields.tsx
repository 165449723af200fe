import { useState } from "react";
import type { ReactNode } from "react";
import type { Tank } from "../../site/index.js";
import { distance, elevation, length, liquidVolume, mass } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { namedFor, tankBody, tankChoices } from "../../store/index.js";
import { ElevationField } from "../fields/ElevationField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useTypical } from "../fields/useTypical.js";
import { useSite } from "../useSite.js";
import { BackfillFields, CourseFields } from "./EarthFields.js";
import { BearingField, PlaceFields } from "./PlaceFields.js";
import { TANK_SIDES } from "./sides.js";
import { StripOver } from "./StripFields.js";
import { TankDepthLine } from "./TankDepthLine.js";
import { WallFields } from "./WallFields.js";
import { useChange } from "./useChange.js";
import { Term } from "../book/Term.js";

type Body = Tank["body"];
const SIZES = [
  { key: "length", label: words.digLeaf.lengthOutside },
  { key: "width", label: words.digLeaf.widthOutside },
  { key: "height", label: words.digLeaf.heightOutside },
] as const;
const INVERTS = [
  { key: "inlet", label: words.digLeaf.inletInvert },
  { key: "outlet", label: words.digLeaf.outletInvert },
  { key: "lowWater", label: words.digLeaf.pumpStopsAt },
] as const;

/** Whether a body is a row of the catalogue as it stands, weight and inverts too. */
function isOf(body: Body, id: string): boolean {
  const row = Object.entries(tankBody(id)).filter(([, value]) => value !== undefined);
  return row.every(([key, value]) => body[key as keyof Body] === value);
}

function BodyFields({ work }: { work: Tank }): ReactNode {
  const { units } = useSite().site;
  const change = useChange(work);
  const setBody = (what: string, next: Partial<Body>): void =>
    change(what, { body: { ...work.body, ...next } });
  const clear = (what: string, key: keyof Body): void => {
    const kept = Object.entries(work.body).filter(([name]) => name !== key);
    change(what, { body: Object.fromEntries(kept) as Body });
  };
  // Who chose to type the sizes keeps that choice, though they be those of a row.
  const [typing, setTyping] = useState<string | null>(null);
  const known = typing === work.id ? undefined : tankChoices.find(({ id }) => isOf(work.body, id));
  return (
    <>
      <ChoiceField
        label={words.digLeaf.tankLabel}
        name="tank-size"
        value={known?.id ?? "own"}
        choices={[...namedFor(tankChoices, units), { id: "own", name: words.digLeaf.sizesAsTyped }]}
        onChoose={(id) => {
          setTyping(id === "own" ? work.id : null);
          if (id !== "own") change(words.digLeaf.tankEdit, { body: tankBody(id) });
        }}
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
                {label} <small>{words.digLeaf.aboveUnderside}</small>
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
                : words.digLeaf.atElevation(elevation.print(work.base + above, units))
            }
          />
        );
      })}
      <MeasureField
        label={words.digLeaf.holds}
        name="liquid"
        value={work.body.liquidVolume}
        measure={liquidVolume}
        least={0}
        above
        onCommit={(liquid) => setBody(words.digLeaf.volumeEdit, { liquidVolume: liquid })}
        onClear={() => clear(words.digLeaf.volumeEdit, "liquidVolume")}
      />
      <MeasureField
        label={
          <>
            {words.digLeaf.weighs} <small>{words.digLeaf.emptyFromTicket}</small>
          </>
        }
        name="mass"
        value={work.body.emptyMass}
        measure={mass}
        least={0}
        above
        onCommit={(emptyMass) => setBody(words.digLeaf.weightEdit, { emptyMass })}
        onClear={() => clear(words.digLeaf.weightEdit, "emptyMass")}
      />
    </>
  );
}

/** A tank and its hole: where, how deep, how it is bedded and filled round, and the tank itself. */
export function TankFields({ work }: { work: Tank }): ReactNode {
  const change = useChange(work);
  return (
    <>
      <h3>{words.digLeaf.theTankItself}</h3>
      <BodyFields work={work} />
      <h3>{words.digLeaf.itsHole}</h3>
      <ElevationField
        label={words.digLeaf.underside}
        name="base"
        value={work.base}
        at={[work.at]}
        onCommit={(base) => change(words.digLeaf.depthEdit, { base })}
      />
      <MeasureField
        label={
          <>
            <Term id="overdig">{words.digLeaf.overdig}</Term>
            {words.digLeaf.eachSide}
          </>
        }
        name="overdig"
        value={work.overdig}
        measure={length}
        onCommit={(overdig) => change(words.digLeaf.overdigEdit, { overdig })}
        typical={useTypical("overdig")}
      />
      <CourseFields
        term="bedding"
        label={words.digLeaf.bedding}
        measured="thick"
        name="bedding"
        {...work.bedding}
        typical={useTypical("bedding")}
        onDepth={(depth) =>
          change(words.digLeaf.beddingEdit, { bedding: { ...work.bedding, depth } })
        }
        onMaterial={(material) =>
          change(words.digLeaf.beddingEdit, { bedding: { ...work.bedding, material } })
        }
      />
      <WallFields
        walls={work.walls}
        sides={TANK_SIDES}
        typical={useTypical("holeWall")}
        onChange={(walls) => change(words.digLeaf.wallsEdit, { walls })}
      />
      <BackfillFields
        backfill={work.backfill}
        crown={work.crown}
        onBackfill={(backfill) => change(words.digLeaf.backfillEdit, { backfill })}
        onCrown={(crown) => change(words.digLeaf.crownEdit, { crown })}
      />
      <h3>{words.digLeaf.whereItLies}</h3>
      <PlaceFields
        of={words.digLeaf.centre}
        at={work.at}
        onMove={(at) => change(words.digLeaf.placeEdit, { at })}
      />
      <TankDepthLine work={work} />
      <BearingField
        value={work.bearing}
        onTurn={(bearing) => change(words.digLeaf.bearingEdit, { bearing })}
      />
      <StripOver work={work} />
    </>
  );
}
