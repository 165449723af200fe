import type { ReactNode } from "react";
import { addLayer, freshId, removeLayer, setLayer } from "../../site/index.js";
import type { Layer } from "../../site/index.js";
import { words } from "../../words/index.js";
import { MaterialField } from "../fields/MaterialField.js";
import { NameField } from "../fields/NameField.js";
import { MaterialSwatch } from "../Swatch.js";
import { useEdit, useSite } from "../useSite.js";
import { SoilQuestions } from "./SoilQuestions.js";

function LayerForm({ layer, index }: { layer: Layer; index: number }): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const change = (what: string, next: Partial<Layer>): void =>
    edit(words.surveyLeaf.ofLayerEdit(what, layer.name), (now) =>
      setLayer(now, layer.id, (one) => ({ ...one, ...next })),
    );
  const addOver = (): void =>
    edit(words.surveyLeaf.addALayerEdit, (now) =>
      addLayer(
        now,
        { id: freshId(now, "layer"), name: words.surveyLeaf.newLayer, material: layer.material },
        index,
      ),
    );
  return (
    <details className="working">
      <summary>
        <span>
          <MaterialSwatch material={layer.material} /> {layer.name}
        </span>
        <span className="soft">
          {index === site.ground.layers.length - 1 ? words.surveyLeaf.toAnyDepth : ""}
        </span>
      </summary>
      <div className="inside">
        <NameField
          label={words.surveyLeaf.name}
          value={layer.name}
          onCommit={(name) => change(words.surveyLeaf.nameEdit, { name })}
        />
        <MaterialField
          label={words.surveyLeaf.digsAs}
          value={layer.material}
          kinds={["topsoil", "soil", "rippable", "rock"]}
          onChoose={(material) => change(words.surveyLeaf.materialEdit, { material })}
        />
        <SoilQuestions layer={layer} />
        <div className="tools">
          <button type="button" className="link" onClick={addOver}>
            {words.surveyLeaf.addLayerOver}
          </button>
          {site.ground.layers.length > 1 && (
            <button
              type="button"
              className="link"
              onClick={() =>
                edit(words.surveyLeaf.removeLayerEdit(layer.name), (now) =>
                  removeLayer(now, layer.id),
                )
              }
            >
              {words.surveyLeaf.remove}
            </button>
          )}
        </div>
      </div>
    </details>
  );
}

/** The layers from the top down; how thick each is, the probes say. */
export function LayerFields(): ReactNode {
  const { site } = useSite();
  return (
    <>
      <h2>
        {words.surveyLeaf.layers} <span className="aside">{words.surveyLeaf.fromTopDown}</span>
      </h2>
      {site.ground.layers.map((layer, index) => (
        <LayerForm key={layer.id} layer={layer} index={index} />
      ))}
    </>
  );
}
