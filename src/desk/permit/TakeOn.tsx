import { useId, useRef, useState } from "react";
import type { ReactNode } from "react";
import { acceptFinding, parted, withdrawAcceptance } from "../../site/index.js";
import type { Finding } from "../../site/index.js";
import { words } from "../../words/index.js";
import { useEdit, useSite } from "../useSite.js";
import { ReasonForm } from "./ReasonForm.js";
import { todayIso } from "./isoDay.js";

const says = words.permit.takeOn;

/** A reason, with who gave it and when, where that is known. */
interface TakenOn {
  reason: string;
  by?: string | undefined;
  on?: string | undefined;
  /** What the finding said then, where its figures have changed since. */
  then?: string | undefined;
}

/** "Taken on (R. Vale, 2026-05-14): the reason". */
export function takenWords({ reason, by, on, then }: TakenOn): string {
  const who = [by, on].filter((part) => part !== undefined && part !== "").join(", ");
  const taken = who === "" ? says.takenPlain(reason) : says.takenBy(who, reason);
  return then === undefined ? taken : `${taken} ${says.saidThen(then)}`;
}

/** The way to take a caution or note on, with a written reason; nothing for a stop. */
export function TakeOn({ finding }: { finding: Finding }): ReactNode {
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  if (finding.level === "stop") return null;
  const leave = (): void => {
    setOpen(false);
    requestAnimationFrame(() => button.current?.focus());
  };
  if (open) return <TakeOnForm finding={finding} onLeave={leave} />;
  return (
    <button
      ref={button}
      type="button"
      className="link take-on"
      data-take-on={finding.code}
      onClick={() => setOpen(true)}
    >
      {says.open}
      <span className="unseen">{says.of(parted(finding.text)[0])}</span>
    </button>
  );
}

function TakeOnForm({ finding, onLeave }: { finding: Finding; onLeave: () => void }): ReactNode {
  const { schemeId } = useSite();
  const edit = useEdit();
  const id = useId();
  const [by, setBy] = useState("");
  const [on, setOn] = useState(todayIso);
  return (
    <ReasonForm
      title={says.title}
      label={says.title}
      tooShort={says.short}
      keep={says.take}
      leave={says.leave}
      onLeave={onLeave}
      onKeep={(reason) => {
        const who = { ...(by.trim() !== "" && { by: by.trim() }), ...(on !== "" && { on }) };
        edit(says.stepTake, (now) => acceptFinding(now, schemeId, finding, { reason, ...who }));
      }}
    >
      <div className="reason-who">
        <label htmlFor={`${id}-by`}>
          {says.by} <small>{says.optional}</small>
        </label>
        <input
          id={`${id}-by`}
          autoComplete="name"
          data-field="taken-by"
          data-typing
          value={by}
          onChange={(event) => setBy(event.target.value)}
        />
        <label htmlFor={`${id}-on`}>
          {says.on} <small>{says.optional}</small>
        </label>
        <input
          id={`${id}-on`}
          type="date"
          data-field="taken-on"
          value={on}
          onChange={(event) => setOn(event.target.value)}
        />
      </div>
      <p className="soft">{says.does}</p>
    </ReasonForm>
  );
}

/** Opens a finding that was taken on again. */
export function Withdraw({ finding }: { finding: Finding }): ReactNode {
  const { schemeId } = useSite();
  const edit = useEdit();
  return (
    <button
      type="button"
      className="link"
      data-withdraw={finding.code}
      onClick={() => edit(says.stepBack, (now) => withdrawAcceptance(now, schemeId, finding))}
    >
      {says.withdraw}
      <span className="unseen">{says.of(parted(finding.text)[0])}</span>
    </button>
  );
}
