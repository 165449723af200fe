import { useId, useRef, useState } from "react";
import type { ReactNode } from "react";
import type { Checklist, ChecklistItem } from "../../estimate/index.js";
import { answerChecklist } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { goToLeaf } from "../book/goTo.js";
import { useLimitDrafts } from "../limits/drafts.js";
import { useEdit, useSite } from "../useSite.js";
import { ReasonForm } from "./ReasonForm.js";
import { whereEntered } from "./whereEntered.js";

const says = words.permit.list;

const SIGNS = { present: "✓", missing: "○", "not-applicable": "–", "by-hand": "✎" } as const;

/** What an office asks to see on the plan, how much of it is there, and the way to the rest. */
export function ChecklistSection({ list }: { list: Checklist }): ReactNode {
  const { asked, present } = list;
  const notAsked = list.groups
    .flatMap(({ items }) => items)
    .filter(({ state }) => state === "not-applicable").length;
  return (
    <section aria-label={says.title} data-permit-list="">
      <h2>
        {says.title} <span className="aside">{says.progress(present, asked)}</span>
      </h2>
      <progress
        className="permit-progress"
        value={present}
        max={Math.max(1, asked)}
        aria-label={says.progressLabel(present, asked)}
      />
      <p className="says">
        {says.says}
        {notAsked > 0 && ` ${says.set(notAsked)}.`}
      </p>
      {list.groups.map((group) => (
        <Group key={group.id} title={group.title} items={group.items} />
      ))}
      <p className="rule-source">{says.source(list.source)}</p>
    </section>
  );
}

function Group({ title, items }: { title: string; items: readonly ChecklistItem[] }): ReactNode {
  const asked = items.filter(({ state }) => state !== "not-applicable");
  const there = asked.filter(({ state }) => state !== "missing").length;
  // Open where something is missing when the leaf is opened; it then stays as the person has it.
  const [open, setOpen] = useState(there < asked.length);
  const count = asked.length === 0 ? says.groupNone : says.groupCount(there, asked.length);
  return (
    <details
      className="working permit-group"
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        <span className="text">{title}</span>
        <span className="amount">
          {there === asked.length && <span aria-hidden="true">✓ </span>}
          {count}
        </span>
      </summary>
      <ul className="permit-items">
        {items.map((item) => (
          <Item key={item.id} item={item} />
        ))}
      </ul>
    </details>
  );
}

function Item({ item }: { item: ChecklistItem }): ReactNode {
  const { id, title, state, because } = item;
  return (
    <li className="permit-item" data-permit={id} data-state={state}>
      <span className="permit-sign" aria-hidden="true">
        {SIGNS[state]}
      </span>
      <div>
        <p>
          <strong>{title}</strong> <span className="permit-state">{says.states[state]}</span>
        </p>
        <p className="soft">{because}</p>
        <ItemTools item={item} />
      </div>
    </li>
  );
}

/** The way to where an item is entered, and the answer that a person gives to one that is missing. */
function ItemTools({ item }: { item: ChecklistItem }): ReactNode {
  const { id, title, state, found, byHand } = item;
  const { site } = useSite();
  const edit = useEdit();
  const [answering, setAnswering] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const place = whereEntered(site, id);
  const answered = found !== state && (state === "not-applicable" || state === "by-hand");
  const open = state === "missing" || state === "present";
  if (answering && open) {
    const leave = (): void => {
      setAnswering(false);
      requestAnimationFrame(() => button.current?.focus());
    };
    return <AnswerForm item={item} onLeave={leave} />;
  }
  const go = (): void => {
    if (place === null) return;
    if (place.kind !== null) useLimitDrafts.setState({ kind: place.kind });
    if (place.picked !== null) useDesk.getState().flyTo(place.picked, place.leaf);
    goToLeaf(place.leaf, place.find, true);
  };
  return (
    <div className="permit-tools">
      {place !== null && found !== "not-applicable" && (
        <button type="button" className="link" data-go={id} onClick={go}>
          {says.go}
          <span className="unseen">{says.goTo(title)}</span>
        </button>
      )}
      {open && (
        <button
          ref={button}
          type="button"
          className="link"
          data-answer={id}
          onClick={() => setAnswering(true)}
        >
          {byHand && state === "missing" ? says.answer : says.answerNotAsked}
          <span className="unseen">{says.answerOf(title)}</span>
        </button>
      )}
      {answered && (
        <button
          type="button"
          className="link"
          data-take-back={id}
          onClick={() => {
            setAnswering(false);
            edit(says.step(title), (now) => answerChecklist(now, id, null));
          }}
        >
          {says.takeBack}
          <span className="unseen">{says.answerOf(title)}</span>
        </button>
      )}
    </div>
  );
}

type Answer = "not-applicable" | "by-hand";

function AnswerForm({ item, onLeave }: { item: ChecklistItem; onLeave: () => void }): ReactNode {
  const { id, title, found } = item;
  // What is there is not shown elsewhere: of it only "not asked" can be said.
  const though = found === "present";
  const byHand = item.byHand && !though;
  const edit = useEdit();
  const name = useId();
  const [state, setState] = useState<Answer>("not-applicable");
  const choices = [
    { is: "not-applicable", text: says.notAsked },
    { is: "by-hand", text: says.elsewhere },
  ] as const;
  return (
    <ReasonForm
      title={`${says.which}: ${title}`}
      label={byHand ? says.note : says.notAsked}
      tooShort={says.short}
      keep={says.keep}
      leave={though ? says.leaveThere : says.leave}
      onLeave={onLeave}
      onKeep={(note) =>
        edit(says.step(title), (now) =>
          answerChecklist(now, id, { state, note, ...(though && { though }) }),
        )
      }
      before={
        byHand && (
          <fieldset className="permit-choice">
            <legend className="unseen">{says.which}</legend>
            {choices.map(({ is, text }) => (
              <label key={is}>
                <input
                  type="radio"
                  name={name}
                  value={is}
                  checked={state === is}
                  onChange={() => setState(is)}
                />
                {text}
              </label>
            ))}
          </fieldset>
        )
      }
    />
  );
}
