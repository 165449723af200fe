import type { ReactNode } from "react";
import { renameWork, reorderWork } from "../../site/index.js";
import type { Work } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { NameField } from "../fields/NameField.js";
import { useEdit, useSite } from "../useSite.js";
import { BedFields } from "./BedFields.js";
import { CopyTo } from "./CopyTo.js";
import { MarkTools, UnderLock } from "./MarkTools.js";
import { BuildingFields, PileFields } from "./MassingFields.js";
import { PadFields } from "./PadFields.js";
import { StripFields } from "./StripFields.js";
import { TankFields } from "./TankFields.js";
import { TrenchFields } from "./TrenchFields.js";

function KindFields({ work }: { work: Work }): ReactNode {
  switch (work.kind) {
    case "tank":
      return <TankFields work={work} />;
    case "pad":
      return <PadFields work={work} />;
    case "trench":
      return <TrenchFields work={work} />;
    case "bed":
      return <BedFields work={work} />;
    case "building":
      return <BuildingFields work={work} />;
    case "pile":
      return <PileFields work={work} />;
    case "strip":
      return <StripFields work={work} />;
  }
}

/** Every value of one work as a field, and what is done with the work as a whole. */
export function WorkForm({ work }: { work: Work }): ReactNode {
  const { site, schemeId } = useSite();
  const edit = useEdit();
  const { form } = words.picked;
  const duplicate = useDesk((desk) => desk.duplicateSelected);
  const remove = useDesk((desk) => desk.removeSelected);
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  const place = works.findIndex((one) => one.id === work.id);
  const move = (to: number): void =>
    edit(words.picked.steps.order(work.name), (now) => reorderWork(now, schemeId, work.id, to));
  return (
    <div className="form">
      <NameField
        label={words.digLeaf.name}
        name="name"
        value={work.name}
        onCommit={(name) =>
          edit(words.digLeaf.nameOfEdit(work.name), (now) =>
            renameWork(now, schemeId, work.id, name),
          )
        }
      />
      <UnderLock thing={{ kind: "work", id: work.id }} of={work}>
        <KindFields work={work} />
      </UnderLock>
      <div className="tools">
        {(work.kind !== "strip" || work.area.by === "outline") && (
          <button type="button" className="link" onClick={duplicate}>
            {form.copy}
          </button>
        )}
        {place > 0 && (
          <button type="button" className="link" onClick={() => move(place - 1)}>
            {form.earlier}
          </button>
        )}
        {place < works.length - 1 && (
          <button type="button" className="link" onClick={() => move(place + 1)}>
            {form.later}
          </button>
        )}
        {(work.kind !== "strip" || work.area.by === "outline") && <CopyTo />}
        <MarkTools things={[{ kind: "work", id: work.id }]} />
        <button type="button" className="link" disabled={work.locked === true} onClick={remove}>
          {form.remove}
        </button>
      </div>
    </div>
  );
}
