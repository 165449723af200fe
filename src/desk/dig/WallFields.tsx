import { useRef } from "react";
import type { ReactNode } from "react";
import { withoutAbsent } from "../../site/index.js";
import type { Walls } from "../../site/index.js";
import { benchToPlace } from "../../store/index.js";
import { length, wallSlope } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useTypical } from "../fields/useTypical.js";
import { useSite } from "../useSite.js";
import type { TypicalValue } from "../fields/Typical.js";
import type { Side } from "./sides.js";
import { WALL_WAYS, wallsOtherWay, wallWayOf } from "./wallWays.js";
import type { KeptWalls } from "./wallWays.js";
import { Term } from "../book/Term.js";

/** run per rise: flatter walls than this are hardly meant. Common practice, no source. */
const FLATTEST = 4;

const flatDoubt = (run: number): string | null =>
  run > FLATTEST ? words.digLeaf.goesOutEvery1(Math.round(run * 10) / 10) : null;

interface SlopeFieldProps {
  label: string;
  aside?: string;
  name: string;
  value: number | undefined;
  onCommit: (run: number) => void;
  onClear?: () => void;
  usual?: string;
  typical?: TypicalValue | undefined;
}

/** The slope of a wall or a filled side. */
export function SlopeField({
  label,
  aside = words.digLeaf.runRise,
  ...rest
}: SlopeFieldProps): ReactNode {
  return (
    <MeasureField
      label={
        <>
          {label} <small>{aside}</small>
        </>
      }
      measure={wallSlope}
      least={0}
      doubt={flatDoubt}
      {...rest}
    />
  );
}

interface WallFieldsProps {
  walls: Walls;
  /** What each side is called, in the order of `sides`. */
  sides: readonly Side[];
  onChange: (walls: Walls) => void;
  /** The slope that the walls of a new work of this kind have. */
  typical: TypicalValue;
}

type OneWay<By extends Walls["by"]> = Extract<Walls, { by: By }>;

function SideFields(props: WallFieldsProps & { walls: OneWay<"run"> }): ReactNode {
  const { walls, sides, onChange, typical } = props;
  if (walls.sides === undefined) {
    return (
      <SlopeField
        label={words.digLeaf.wallSlope}
        name="wall-run"
        value={walls.run}
        onCommit={(run) => onChange({ ...walls, run })}
        typical={typical}
      />
    );
  }
  const own = walls.sides;
  return sides.map((side, index) => (
    <SlopeField
      key={index}
      label={side.name}
      aside={side.aside}
      name={`wall-run-${index}`}
      value={own[index]}
      onCommit={(run) =>
        onChange({ ...walls, sides: own.map((one, other) => (other === index ? run : one)) })
      }
    />
  ));
}

function LayerWallFields(props: {
  walls: OneWay<"layers">;
  onChange: (walls: Walls) => void;
}): ReactNode {
  const { walls, onChange } = props;
  return (
    <MeasureField
      label={words.digLeaf.ledgeWide}
      name="wall-ledge"
      value={walls.ledge}
      measure={length}
      least={0}
      onCommit={(ledge) => onChange({ ...walls, ledge })}
      onClear={() => onChange(withoutAbsent({ ...walls, ledge: undefined }))}
      usual={words.digLeaf.none}
      note={words.digLeaf.eachLayerStandsOwn}
    />
  );
}

function BenchFields(props: {
  walls: OneWay<"benches">;
  onChange: (walls: Walls) => void;
}): ReactNode {
  const { walls, onChange } = props;
  const bench = useTypical("bench");
  const common = { measure: length, least: 0, above: true } as const;
  return (
    <>
      <MeasureField
        label={words.digLeaf.lowestRise}
        name="bench-first"
        value={walls.first}
        {...common}
        onCommit={(first) => onChange({ ...walls, first })}
        onClear={() => onChange(withoutAbsent({ ...walls, first: undefined }))}
        usual={walls.rise}
      />
      <MeasureField
        label={
          <>
            <Term id="bench">{words.digLeaf.bench}</Term> {words.digLeaf.rise}
          </>
        }
        name="bench-rise"
        value={walls.rise}
        {...common}
        onCommit={(rise) => onChange({ ...walls, rise })}
        typical={bench}
      />
      <MeasureField
        label={words.digLeaf.benchTread}
        name="bench-tread"
        value={walls.tread}
        {...common}
        onCommit={(tread) => onChange({ ...walls, tread })}
        typical={bench}
      />
    </>
  );
}

/** How the walls of a hole are cut. What was typed for one way is kept while another is looked at. */
export function WallFields({ walls, sides, onChange, typical }: WallFieldsProps): ReactNode {
  const { site } = useSite();
  const kept = useRef<KeptWalls>({});
  const way = wallWayOf(walls);
  return (
    <>
      <ChoiceField
        label={words.digLeaf.walls}
        name="walls"
        value={way}
        choices={WALL_WAYS}
        onChoose={(next) => {
          if (next === way) return;
          kept.current = { ...kept.current, [way]: walls };
          const bench = benchToPlace(site);
          onChange(wallsOtherWay({ way: next, kept: kept.current, sides: sides.length, bench }));
        }}
      />
      {walls.by === "run" && <SideFields {...{ walls, sides, onChange, typical }} />}
      {walls.by === "layers" && <LayerWallFields {...{ walls, onChange }} />}
      {walls.by === "benches" && <BenchFields {...{ walls, onChange }} />}
    </>
  );
}
