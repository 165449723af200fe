import type { ReactNode } from "react";
import { addLayer, freshId, removeLayer, setLayer } from "../../site/index.js";
import type { Layer } from "../../site/index.js";
import { MaterialField } from "../fields/MaterialField.js";
import { NameField } from "../fields/NameField.js";
import { MaterialSwatch } from "../Swatch.js";
import { useEdit, useSite } from "../useSite.js";
import { SoilQuestions } from "./SoilQuestions.js";

function LayerForm({ layer, index }: { layer: Layer; index: number }): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const change = (what: string, next: Partial<Layer>): void =>
    edit(`${what} of layer ${layer.name}`, (now) =>
      setLayer(now, layer.id, (one) => ({ ...one, ...next })),
    );
  const addOver = (): void =>
    edit("add a layer", (now) =>
      addLayer(
        now,
        { id: freshId(now, "layer"), name: "New layer", material: layer.material },
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
          {index === site.ground.layers.length - 1 ? "to any depth" : ""}
        </span>
      </summary>
      <div className="inside">
        <NameField label="Name" value={layer.name} onCommit={(name) => change("name", { name })} />
        <MaterialField
          label="Digs as"
          value={layer.material}
          kinds={["topsoil", "soil", "rippable", "rock"]}
          onChoose={(material) => change("material", { material })}
        />
        <SoilQuestions layer={layer} />
        <div className="tools">
          <button type="button" className="link" onClick={addOver}>
            Add a layer over it
          </button>
          {site.ground.layers.length > 1 && (
            <button
              type="button"
              className="link"
              onClick={() =>
                edit(`remove layer ${layer.name}`, (now) => removeLayer(now, layer.id))
              }
            >
              Remove
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
        Layers <span className="aside">from the top down</span>
      </h2>
      {site.ground.layers.map((layer, index) => (
        <LayerForm key={layer.id} layer={layer} index={index} />
      ))}
    </>
  );
}
