import { insideOutline } from "./picking.js";
import { standingBodies, type SceneContents } from "./sceneTargets.js";
import { toScene } from "./frame.js";
import { EYE_HEIGHT, type Terrain } from "./walking.js";

/** m that a person can step up onto a tank or a bed. */
const STEP_UP = 0.6;
/** m about a tree's middle that its trunk takes. */
const TRUNK = 0.45;

/** What can be walked on and what is in the way at this stage; scene frame. */
export function terrainOf(contents: SceneContents): Terrain {
  const { frame, ground, site } = contents;
  const bodies = standingBodies(contents);
  const low = bodies.filter(({ work }) => work.kind !== "building");
  const trees = (site.limits ?? []).flatMap((limit) =>
    limit.kind === "tree" && limit.at !== undefined ? [toScene(frame, limit.at)] : [],
  );
  return {
    heightAt(x, y) {
      const bare = ground.heightAt(x, y);
      if (bare === null) return null;
      const tops = low.filter(({ prism }) => insideOutline([x, y], prism.outline));
      return Math.max(bare.z, ...tops.map(({ prism }) => prism.top));
    },
    isBlocked(x, y, z) {
      if (trees.some((tree) => Math.hypot(tree[0] - x, tree[1] - y) < TRUNK)) return true;
      return bodies.some(
        ({ work, prism }) =>
          insideOutline([x, y], prism.outline) &&
          (work.kind === "building" || z < prism.top - STEP_UP) &&
          z + EYE_HEIGHT > prism.bottom,
      );
    },
  };
}
