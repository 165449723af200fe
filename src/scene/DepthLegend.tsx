import type { CSSProperties, ReactElement } from "react";
import { length, type UnitSystem } from "../units/index.js";
import { words } from "../words/index.js";
import { bandLimits, bandTones, bandUnit, type BandSide, type DepthBands } from "./depthBands.js";
import "./depthLegend.css";

/** What the tones of cut and fill stand for, and the deepest and highest at this stage. */
export function DepthLegend(props: { bands: DepthBands | null; units: UnitSystem }): ReactElement {
  const { bands, units } = props;
  if (bands === null) {
    return (
      <p className="depth-legend" data-testid="depth-legend" data-over="">
        {words.shading.asFound}
      </p>
    );
  }
  return (
    <div
      className="depth-legend"
      data-testid="depth-legend"
      data-over=""
      role="group"
      aria-label={words.shading.depths}
    >
      {(["cut", "fill"] as const).map(
        (side) =>
          bands[side].count > 0 && <Side key={side} side={side} band={bands[side]} units={units} />,
      )}
    </div>
  );
}

interface SideProps {
  side: "cut" | "fill";
  band: BandSide;
  units: UnitSystem;
}

function Side({ side, band, units }: SideProps): ReactElement {
  const tones = bandTones(side, band.count);
  const most = length.print(band.most, units);
  return (
    <div className="depth-side" data-side={side} style={{ "--bands": band.count } as CSSProperties}>
      <p data-figure={side === "cut" ? "deepest-cut" : "highest-fill"}>
        {side === "cut" ? words.shading.deepest(most) : words.shading.highest(most)}
      </p>
      <div className="depth-tones" aria-hidden="true">
        {tones.map((tone, i) => (
          <i
            key={tone}
            style={{ "--tone": tone } as CSSProperties}
            data-dark={i >= tones.length / 2}
          />
        ))}
      </div>
      <div className="depth-limits">
        {bandLimits(band, units).map((limit) => (
          <span key={limit}>{limit}</span>
        ))}
        <span>{bandUnit(band, units)}</span>
      </div>
    </div>
  );
}
