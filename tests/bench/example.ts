/** The whole estimate, and the mesh of a stage, on an example site as it is being dragged. */
import { readFileSync } from "node:fs";
import { estimate, stageMesh } from "../../src/estimate/index.js";
import { readSite, type Site, type Work } from "../../src/site/index.js";
import { median, type Row } from "./timing.js";

/** Alder Flat, estimated and drawn. Every run has the tank a centimetre further on, as in a drag. */
export function exampleRows(): Row[] {
  const site = alderFlat();
  const id = site.schemes[0]!.id;
  let step = 0;
  const dragged = (): Site => moved(site, 0.01 * (step++ % 50));
  return [
    { name: "estimate-example", median_ms: median(201, 60, () => void estimate(dragged(), id)) },
    {
      name: "mesh-example",
      median_ms: median(101, 30, () => void stageMesh(dragged(), id, "dug")),
    },
  ];
}

function alderFlat(): Site {
  const file = new URL("../../shared/sites/alder-flat.site.json", import.meta.url);
  const read = readSite(readFileSync(file, "utf8"));
  if (!read.ok) throw new Error("the example cannot be read");
  return read.value;
}

/** Every tank moved east, m; all but the works keeps its identity. */
function moved(site: Site, east: number): Site {
  const schemes = site.schemes.map((scheme) => ({
    ...scheme,
    works: scheme.works.map((work): Work => {
      if (work.kind !== "tank") return work;
      return { ...work, at: [work.at[0] + east, work.at[1]] };
    }),
  }));
  return { ...site, schemes };
}
