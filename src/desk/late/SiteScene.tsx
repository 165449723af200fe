import { useMemo } from "react";
import type { ReactNode } from "react";
import type { SiteSceneProps } from "../../scene/index.js";
import type { Site } from "../../site/index.js";
import { words } from "../../words/index.js";
import { Late } from "./Late.js";
import { lotOutline, outlinePath } from "./lotOutline.js";
import { SCENE_PART } from "./parts.js";

const SHEET = { width: 320, height: 220 };
const MARGIN = 12;

/** The lot on paper, drawn with a pencil, until what draws the ground has come. */
function GroundComing({ site }: { site: Site }): ReactNode {
  const path = useMemo(() => outlinePath(lotOutline(site), SHEET), [site]);
  const [width, height] = [SHEET.width + 2 * MARGIN, SHEET.height + 2 * MARGIN];
  return (
    <div className="ground-coming">
      <svg viewBox={`${-MARGIN} ${-MARGIN} ${width} ${height}`} aria-hidden="true">
        <path className="lot" d={path} />
        <path className="pencil" d={path} pathLength={100} />
      </svg>
      <p role="status">{words.offline.groundComing}</p>
    </div>
  );
}

/** The drawn ground, or what stands in for it. */
export function SiteScene(props: SiteSceneProps): ReactNode {
  return (
    <Late
      part={SCENE_PART}
      name={words.offline.theGround}
      coming={<GroundComing site={props.site} />}
    >
      {(Scene) => <Scene {...props} />}
    </Late>
  );
}
