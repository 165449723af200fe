import type { ReactNode } from "react";
import { words } from "../words/index.js";
import type { Shading } from "./ViewerScene.js";

const VIEWS = [
  { view: "orbit", name: words.looking.orbit },
  { view: "plan", name: words.looking.plan },
] as const;

interface Props {
  /** False where only a drawing is shown: then there is nothing to measure or to see through. */
  hasPicture: boolean;
  view: "orbit" | "plan";
  cutting: boolean;
  measuring: boolean;
  shading: Shading;
  onView: (view: "orbit" | "plan") => void;
  onCutting: (on: boolean) => void;
  onMeasuring: (on: boolean) => void;
  onShading: (shading: Shading) => void;
}

/** The bar over the picture: views, and what else it shows. */
export function ViewerBar(props: Props): ReactNode {
  const {
    hasPicture,
    view,
    cutting,
    measuring,
    shading,
    onView,
    onCutting,
    onMeasuring,
    onShading,
  } = props;
  const { depths, through } = shading;
  const said = words.viewer;
  const section = { name: said.section.show, title: said.section.title };
  const onPicture = [
    {
      name: words.looking.measure,
      title: words.looking.measureTitle,
      on: measuring,
      press: onMeasuring,
    },
    {
      name: said.looks.through,
      title: words.shading.throughTitle,
      on: through,
      press: (on: boolean) => onShading({ depths, through: on }),
    },
    {
      name: said.looks.depths,
      title: words.shading.depthsTitle,
      on: depths,
      press: (on: boolean) => onShading({ depths: on, through }),
    },
  ];
  const toggles = [{ ...section, on: cutting, press: onCutting }, ...(hasPicture ? onPicture : [])];
  return (
    <div className="scene-bar">
      <div className="view-switch" role="group" aria-label={words.looking.views}>
        {VIEWS.map((one) => (
          <button
            key={one.view}
            type="button"
            aria-pressed={view === one.view}
            onClick={() => onView(one.view)}
          >
            {one.name}
          </button>
        ))}
      </div>
      <div className="bar-tools" role="group" aria-label={words.looking.bar}>
        {toggles.map(({ name, title, on, press }) => (
          <button
            key={name}
            type="button"
            className="bar-button"
            title={title}
            aria-pressed={on}
            onClick={() => press(!on)}
          >
            {name}
          </button>
        ))}
      </div>
    </div>
  );
}
