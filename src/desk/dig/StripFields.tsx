import type { ReactNode } from "react";
import { addWork, areaOutline, findWork, stripsOver } from "../../site/index.js";
import type { Strip, Work } from "../../site/index.js";
import { sizesToPlace, stripOver, stripPlace, useDesk } from "../../store/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
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
  depth > DEEP ? words.digLeaf.topsoilRarelyDeepMeant : null;

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
      change(words.digLeaf.areaEdit, { area: { by: "work", work: id, beyond } });
      return;
    }
    const under = area.by === "work" ? findWork(site, schemeId, area.work) : null;
    const outline = under === null ? null : areaOutline(under);
    if (outline !== null) change(words.digLeaf.areaEdit, { area: { by: "outline", outline } });
  }

  return (
    <>
      <ChoiceField
        label={words.digLeaf.liesOver}
        name="strip-area"
        value={area.by === "work" ? area.work : OWN_OUTLINE}
        choices={[{ id: OWN_OUTLINE, name: words.digLeaf.outlineOwn }, ...choices]}
        onChoose={lieOver}
      />
      {area.by === "work" && (
        <MeasureField
          label={words.digLeaf.reachesBeyondIt}
          name="strip-beyond"
          value={area.beyond}
          measure={length}
          least={0}
          onCommit={(beyond) => change(words.digLeaf.areaEdit, { area: { ...area, beyond } })}
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
  const clear = { onClear: () => change(words.digLeaf.depthEdit, { depth: undefined }) };
  return (
    <>
      <AreaFields work={work} />
      <MeasureField
        label={words.digLeaf.takesOff}
        name="strip-depth"
        value={work.depth}
        measure={length}
        least={0}
        above
        onCommit={(depth) => change(words.digLeaf.depthEdit, { depth })}
        {...(under === undefined ? {} : clear)}
        usual={words.digLeaf.allOf(top?.name.toLowerCase() ?? words.digLeaf.theTopLayer)}
        doubt={deepDoubt}
        note={under === undefined ? words.digLeaf.groundDrawnOneLayer : undefined}
      />
      <MeasureField
        label={words.digLeaf.spreadAgainThick}
        name="strip-put-back"
        value={work.putBack?.depth}
        measure={length}
        least={0}
        above
        onCommit={(depth) => change(words.digLeaf.spreadingEdit, { putBack: { depth } })}
        onClear={() => change(words.digLeaf.spreadingEdit, { putBack: undefined })}
        usual={words.digLeaf.notPutBack}
        doubt={deepDoubt}
        note={work.putBack === undefined ? undefined : words.digLeaf.veryEndOverWhat}
      />
      {area.by === "outline" && (
        <CornerFields
          title={words.digLeaf.corners}
          corners={area.outline}
          least={3}
          onChange={(outline) => change(words.digLeaf.cornersEdit, { area: { ...area, outline } })}
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
    edit(words.digLeaf.stripTopsoilOverEdit(work.name), (now) =>
      addWork(now, schemeId, strip, stripPlace(now, schemeId)),
    );
    select({ kind: "work", id: strip.id });
  };
  return (
    <div className="tools">
      {strips.length === 0 ? (
        <button type="button" className="link" onClick={add}>
          {words.digLeaf.stripTopsoilOverFirst}
        </button>
      ) : (
        strips.map((strip) => (
          <button
            key={strip.id}
            type="button"
            className="link"
            onClick={() => select({ kind: "work", id: strip.id })}
          >
            {words.digLeaf.liesOverIt(strip.name)}
          </button>
        ))
      )}
    </div>
  );
}
