import { SHORTFALL_MATERIAL } from "../cost/index.js";
import { NATIVE } from "../site/index.js";
import type { Estimate } from "./types.js";

/** All that is put in of one material, m³ in place. */
export interface PutIn {
  material: string;
  volume: number;
  /** Part of it that is bought because own earth runs short, m³ in place. */
  shortfall: number;
}

/**
 * What is put in by material. The works ask for own earth without knowing how far it reaches: the
 * part that has to be bought stands with the fill that is bought for it.
 */
export function putInOf({ works, earth }: Pick<Estimate, "works" | "earth">): PutIn[] {
  const volumes = new Map<string, number>();
  const addTo = (id: string, volume: number): void => {
    volumes.set(id, (volumes.get(id) ?? 0) + volume);
  };
  for (const { fill } of works) {
    for (const [id, volume] of Object.entries(fill)) addTo(id, volume);
  }
  const short = earth.importCompacted;
  if (short > 0) {
    addTo(NATIVE, -short);
    addTo(SHORTFALL_MATERIAL, short);
  }
  return [...volumes]
    .filter(([, volume]) => volume > 1e-9)
    .map(([material, volume]) => ({
      ...{ material, volume },
      shortfall: material === SHORTFALL_MATERIAL ? short : 0,
    }));
}
