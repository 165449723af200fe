import { useRef, type ReactNode } from "react";
import { changeLimit, LIMIT_KINDS, limitCorners, limitKind, type Limit } from "../../site/index.js";
import { without } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { CornerFields, PlaceFields } from "../dig/PlaceFields.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { NameField } from "../fields/NameField.js";
import { LimitDetails } from "../limits/LimitDetails.js";
import { OwnSetback } from "../limits/OwnSetback.js";
import { useIntoSight } from "../scrollLeaf.js";
import { useEdit } from "../useSite.js";

const { limit: says } = words.drawing;

/** Kinds that a limit can be turned into: those drawn as it is, a place or a line. */
function kindsFor(limit: Limit): { id: string; name: string }[] {
  const isPlace = limit.at !== undefined;
  return LIMIT_KINDS.filter(({ shape }) => (shape === "place") === isPlace).map(({ id, name }) => ({
    id,
    name,
  }));
}

/** One limit: what it is, where it lies, and the setback that the person keeps from it. */
export function LimitForm({ limit }: { limit: Limit }): ReactNode {
  const form = useRef<HTMLDivElement>(null);
  useIntoSight(form);
  const edit = useEdit();
  const remove = useDesk((desk) => desk.removeSelected);
  const name = limit.name ?? limitKind(limit.kind)?.name ?? limit.kind;
  const change = (what: string, next: (one: Limit) => Limit): void =>
    edit(says.step(what, name), (now) => changeLimit(now, limit.id, next));
  const corners = limitCorners(limit);
  const mayClose = corners !== null && limitKind(limit.kind)?.shape === "area";
  return (
    <div className="form" ref={form}>
      <NameField
        label={says.name}
        name="limit-name"
        value={name}
        onCommit={(typed) => change(says.steps.name, (one) => ({ ...one, name: typed }))}
      />
      <ChoiceField
        label={says.kind}
        name="limit-kind"
        value={limit.kind}
        choices={kindsFor(limit)}
        onChoose={(kind) => change(says.steps.kind, (one) => ({ ...one, kind }))}
      />
      <OwnSetback limit={limit} change={change} />
      <LimitDetails limit={limit} change={change} />
      {limit.at !== undefined && (
        <PlaceFields
          at={limit.at}
          onMove={(at) => change(says.steps.place, (one) => ({ ...one, at }))}
        />
      )}
      {mayClose && corners.places.length > 2 && (
        <ChoiceField
          label={says.shape}
          name="limit-closed"
          value={corners.closed ? "closed" : "open"}
          choices={[
            { id: "open", name: says.open },
            { id: "closed", name: says.closed },
          ]}
          onChoose={(shape) =>
            change(says.steps.shape, (one) =>
              shape === "closed" ? { ...one, closed: true } : without(one, "closed"),
            )
          }
        />
      )}
      {corners !== null && (
        <CornerFields
          title={says.corners}
          corners={corners.places}
          least={corners.closed ? 3 : 2}
          onChange={(path) => change(says.steps.corners, (one) => ({ ...one, path }))}
        />
      )}
      <div className="tools">
        <button type="button" className="link" onClick={remove}>
          {says.remove}
        </button>
      </div>
    </div>
  );
}
