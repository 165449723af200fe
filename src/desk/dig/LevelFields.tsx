import { useState } from "react";
import type { ReactNode } from "react";
import type { Pad } from "../../site/index.js";
import { levelDistance, nextLevel, useDesk } from "../../store/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ElevationField } from "../fields/ElevationField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useSite } from "../useSite.js";
import { CornerFields } from "./PlaceFields.js";
import { useChange } from "./useChange.js";

type Level = NonNullable<Pad["levels"]>[number];

interface LevelFormProps {
  level: Level;
  /** 2 for the first that is added to the pad itself. */
  number: number;
  /** Fewest corners that must stay. */
  least: number;
  onChange: (level: Level) => void;
  onRemove: () => void;
}

function LevelForm({ level, number, least, onChange, onRemove }: LevelFormProps): ReactNode {
  return (
    <fieldset data-level={number}>
      <legend className="slab">
        {words.digLeaf.level(number)}{" "}
        <button type="button" className="link" onClick={onRemove}>
          {words.digLeaf.remove}
          <span className="unseen"> {words.digLeaf.levelNamed(number)}</span>
        </button>
      </legend>
      <ElevationField
        label={words.digLeaf.finishedTop}
        name={`level-${number}-top`}
        value={level.top}
        at={level.outline}
        onCommit={(top) => onChange({ ...level, top })}
      />
      <p className="says">{words.forms.levelCorners}</p>
      <CornerFields
        title={words.digLeaf.cornersOfIt}
        corners={level.outline}
        least={least}
        onChange={(outline) => onChange({ ...level, outline })}
      />
    </fieldset>
  );
}

/** Copies the last level down the slope. */
function NextLevel({ work, onAdd }: { work: Pad; onAdd: (level: Level) => void }): ReactNode {
  const { site } = useSite();
  const tell = useDesk((desk) => desk.tell);
  const [typed, setTyped] = useState<number | null>(null);
  const clear = levelDistance(site, work);
  const distance = typed ?? clear;
  const add = (): void => {
    const level = distance === null ? null : nextLevel(site, work, distance);
    if (level === null) {
      tell(words.digLeaf.nextLevelWouldLie);
      return;
    }
    onAdd(level);
    setTyped(null);
  };
  return (
    <>
      <MeasureField
        label={words.digLeaf.nextDownSlope}
        name="level-distance"
        value={typed ?? undefined}
        measure={length}
        least={0}
        above
        onCommit={setTyped}
        onClear={() => setTyped(null)}
        usual={clear ?? undefined}
        note={words.digLeaf.emptyFarEnoughWalls}
      />
      <div className="tools">
        <button type="button" className="link" onClick={add}>
          {words.digLeaf.addLevelThere}
        </button>
      </div>
    </>
  );
}

/** The further levels of a pad that steps down a slope: each has its own corners and top. */
export function LevelFields({ work }: { work: Pad }): ReactNode {
  const change = useChange(work);
  const levels = work.levels ?? [];
  const ownSides = work.walls.by === "run" && work.walls.sides !== undefined;
  const setLevels = (next: Level[]): void =>
    change(words.digLeaf.levelsEdit, { levels: next.length === 0 ? undefined : next });
  return (
    <details className="working">
      <summary>
        <span className="text">
          {levels.length === 0 ? words.digLeaf.notStepped : words.digLeaf.levels(levels.length + 1)}
        </span>
      </summary>
      <div className="inside">
        {levels.map((level, index) => (
          <LevelForm
            key={index}
            level={level}
            number={index + 2}
            least={ownSides ? level.outline.length : 3}
            onChange={(one) =>
              setLevels(levels.map((other, place) => (place === index ? one : other)))
            }
            onRemove={() => setLevels(levels.filter((_, place) => place !== index))}
          />
        ))}
        <NextLevel work={work} onAdd={(level) => setLevels([...levels, level])} />
      </div>
    </details>
  );
}
