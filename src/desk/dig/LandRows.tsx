import type { ReactNode } from "react";
import { area, distance } from "../../units/index.js";
import { words } from "../../words/index.js";
import { QuantityWorking, Working } from "../Working.js";
import { useSite } from "../useSite.js";

const says = words.hazards.land;

/** How much ground the scheme lays bare, where its water goes, and the barrier that it asks for. */
export function LandRows(): ReactNode {
  const { site, estimate } = useSite();
  if (estimate === null || !(estimate.land.disturbed.value > 0)) return null;
  const { disturbed, barrier, reaches } = estimate.land;
  return (
    <>
      <Working text={says.bare} amount={area.print(disturbed.value, site.units)}>
        {reaches.map((reach) => (
          <p key={reach.limit}>{says.goesTo(area.print(reach.area, site.units), reach.name)}</p>
        ))}
        <QuantityWorking quantity={disturbed} />
      </Working>
      {barrier.value > 0 && (
        <Working text={says.barrier} amount={distance.print(barrier.value, site.units)}>
          <QuantityWorking quantity={barrier} />
        </Working>
      )}
    </>
  );
}
