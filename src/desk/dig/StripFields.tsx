import type { ReactNode } from "react";
import { addWork, areaOutline, findWork, stripsOver } from "../../site/index.js";
import type { Strip, Work } from "../../site/index.js";
import { sizesToPlace, stripOver, stripPlace, useDesk } from "../../store/index.js";
import { length } from "../../units/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useTypical } from "../fields/useTypical.js";
import { useEdit, useSite } from "../useSite.js";
import { CornerFields } from "./PlaceFields.js";
import { useChange } from "./useChange.js";

/** Stands for the strip's own outline in the list of works that it may lie over. */
const OWN_OUTLINE = "";

/** m: topsoil is hardly deeper than this. Common practice, no source. */
const DEEP = 0.6;

const deepDoubt = (depth: number): string | null =>
  depth > DEEP ? "Topsoil is rarely that deep. Is it meant?" : null;

function AreaFields({ work }: { work: Strip }): ReactNode {
  const { site, schemeId } = useSite();
  const change = useChange(work);
  const { area } = work;
  const beyondTypical = useTypical("beyond");
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  const choices = works
    .filter((one) => areaOutline(one) !== null)
    .map(({ id, name }) => ({ id, name }));

  function lieOver(id: string): void {
    if (id !== OWN_OUTLINE) {
      const beyond = area.by === "work" ? area.beyond : sizesToPlace(site).beyond;
      change("area", { area: { by: "work", work: id, beyond } });
      return;
    }
    const under = area.by === "work" ? findWork(site, schemeId, area.work) : null;
    const outline = under === null ? null : areaOutline(under);
    if (outline !== null) change("area", { area: { by: "outline", outline } });
  }

  return (
    <>
      <ChoiceField
        label="Lies over"
        name="strip-area"
        value={area.by === "work" ? area.work : OWN_OUTLINE}
        choices={[{ id: OWN_OUTLINE, name: "An outline of its own" }, ...choices]}
        onChoose={lieOver}
      />
      {area.by === "work" && (
        <MeasureField
          label="Reaches beyond it"
          name="strip-beyond"
          value={area.beyond}
          measure={length}
          least={0}
          onCommit={(beyond) => change("area", { area: { ...area, beyond } })}
          typical={beyondTypical}
        />
      )}
    </>
  );
}

/** Topsoil taken off an area before what follows, kept apart, and spread again at the end. */
export function StripFields({ work }: { work: Strip }): ReactNode {
  const { site } = useSite();
  const change = useChange(work);
  const { area } = work;
  const [top, under] = site.ground.layers;
  const clear = { onClear: () => change("depth", { depth: undefined }) };
  return (
    <>
      <AreaFields work={work} />
      <MeasureField
        label="Takes off"
        name="strip-depth"
        value={work.depth}
        measure={length}
        least={0}
        above
        onCommit={(depth) => change("depth", { depth })}
        {...(under === undefined ? {} : clear)}
        usual={`all of ${top?.name.toLowerCase() ?? "the top layer"}`}
        doubt={deepDoubt}
        note={
          under === undefined
            ? "The ground is drawn as one layer, so a depth is needed here."
            : undefined
        }
      />
      <MeasureField
        label="Spread again, thick"
        name="strip-put-back"
        value={work.putBack?.depth}
        measure={length}
        least={0}
        above
        onCommit={(depth) => change("spreading", { putBack: { depth } })}
        onClear={() => change("spreading", { putBack: undefined })}
        usual="not put back"
        doubt={deepDoubt}
        note={
          work.putBack === undefined
            ? undefined
            : "At the very end, over what is bare within its area."
        }
      />
      {area.by === "outline" && (
        <CornerFields
          title="corners"
          corners={area.outline}
          least={3}
          onChange={(outline) => change("corners", { area: { ...area, outline } })}
        />
      )}
    </>
  );
}

/** The strip that lies over a work, or the way to add one. */
export function StripOver({ work }: { work: Work }): ReactNode {
  const { site, schemeId } = useSite();
  const edit = useEdit();
  const select = useDesk((desk) => desk.select);
  const strips = stripsOver(site, schemeId, work.id);
  const add = (): void => {
    const strip = stripOver(site, schemeId, work.id);
    edit(`strip the topsoil over ${work.name}`, (now) =>
      addWork(now, schemeId, strip, stripPlace(now, schemeId)),
    );
    select({ kind: "work", id: strip.id });
  };
  return (
    <div className="tools">
      {strips.length === 0 ? (
        <button type="button" className="link" onClick={add}>
          + Strip the topsoil over it first
        </button>
      ) : (
        strips.map((strip) => (
          <button
            key={strip.id}
            type="button"
            className="link"
            onClick={() => select({ kind: "work", id: strip.id })}
          >
            {strip.name} lies over it
          </button>
        ))
      )}
    </div>
  );
}
