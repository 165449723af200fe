import type { ReactNode } from "react";
import { changeProbe } from "../../site/index.js";
import type { Probe } from "../../site/index.js";
import { guessedLayers, useDesk, withMeasured } from "../../store/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MarkTools, UnderLock } from "../dig/MarkTools.js";
import { PlaceFields } from "../dig/PlaceFields.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { TypedField } from "../fields/TypedField.js";
import { useEdit, useSite } from "../useSite.js";
import { ProbeWater } from "./ProbeWater.js";

/** One probe: where it was pushed or dug, and how thick each layer was found. */
export function ProbeForm({ probe }: { probe: Probe }): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const remove = useDesk((desk) => desk.removeSelected);
  const change = (what: string, next: Partial<Probe>): void =>
    edit(words.surveyLeaf.ofProbeEdit(what, probe.id), (now) =>
      changeProbe(now, probe.id, (one) => ({ ...one, ...next })),
    );
  const last = site.ground.layers.at(-1);
  const names = site.ground.layers.map((layer) => layer.name);
  const guessed = guessedLayers(probe).filter((name) => names.includes(name));
  return (
    <div className="form">
      <UnderLock thing={{ kind: "probe", id: probe.id }} of={probe}>
        {site.ground.layers.slice(0, -1).map((layer, index) => (
          <MeasureField
            key={layer.id}
            label={
              <>
                {layer.name}, <small>{words.surveyLeaf.thick}</small>
              </>
            }
            name={`thickness-${layer.id}`}
            value={guessed.includes(layer.name) ? undefined : probe.thickness[index]}
            measure={length}
            note={
              guessed.includes(layer.name)
                ? words.surveyLeaf.notMeasuredUntilYou(
                    length.print(probe.thickness[index] ?? 0, site.units),
                  )
                : undefined
            }
            onCommit={(thick) =>
              edit(words.surveyLeaf.thicknessOfProbeEdit(probe.id), (now) =>
                changeProbe(now, probe.id, (one) => withMeasured(one, index, layer.name, thick)),
              )
            }
          />
        ))}
        {last !== undefined && site.ground.layers.length > 1 && (
          <p className="says">{words.surveyLeaf.thenAllWayDown(last.name.toLowerCase())}</p>
        )}
        {site.ground.layers.length > 1 && (
          <ChoiceField
            label={words.surveyLeaf.itEnded}
            name="stopped-in"
            value={probe.stoppedIn ?? ""}
            choices={[
              {
                id: "",
                name: words.surveyLeaf.at(
                  last?.name.toLowerCase() ?? words.surveyLeaf.theLastLayer,
                ),
              },
              ...site.ground.layers.slice(0, -1).map(({ id, name }) => ({
                id,
                name: words.surveyLeaf.leastThick(name.toLowerCase()),
              })),
            ]}
            onChoose={(layer) =>
              edit(words.surveyLeaf.endOfProbeEdit(probe.id), (now) =>
                changeProbe(now, probe.id, ({ stoppedIn: _, ...one }) =>
                  layer === "" ? one : { ...one, stoppedIn: layer },
                ),
              )
            }
          />
        )}
        <ProbeWater probe={probe} />
        {guessed.length === 0 && (
          <TypedField
            label={words.surveyLeaf.note}
            shown={probe.note ?? ""}
            read={(text) => ({ ok: true, value: text.trim() })}
            onCommit={(note) => change(words.surveyLeaf.noteEdit, { note })}
          />
        )}
        <PlaceFields
          at={[probe.x, probe.y]}
          onMove={([x, y]) => change(words.surveyLeaf.placeEdit, { x, y })}
        />
      </UnderLock>
      <div className="tools">
        <MarkTools things={[{ kind: "probe", id: probe.id }]} />
        <button type="button" className="link" disabled={probe.locked === true} onClick={remove}>
          {words.surveyLeaf.removeThisProbe}
        </button>
      </div>
    </div>
  );
}
