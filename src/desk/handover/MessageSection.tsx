import { useMemo, useState } from "react";
import type { ReactNode } from "react";
import { messagesFor, orderItems, orderText, type MessageTo } from "../../handover/index.js";
import { setProject } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { WordsField } from "../permit/WordsField.js";
import { useEdit, useSite } from "../useSite.js";

const says = words.handing.message;

/** The messages of the site as it stands, by whom they go to. */
function useMessages(): ReadonlyMap<MessageTo, string> {
  const { site, schemeId, estimate } = useSite();
  return useMemo(() => {
    if (estimate === null) return new Map();
    const job = { site, schemeId, estimate, madeAt: new Date().toISOString() };
    const items = orderItems(job);
    return new Map(messagesFor(items).map((to) => [to, orderText(job, items, to)]));
  }, [site, schemeId, estimate]);
}

async function copy(text: string): Promise<void> {
  const { tell } = useDesk.getState();
  try {
    await navigator.clipboard.writeText(text);
    tell(says.copied);
  } catch {
    // Browsers refuse for many reasons and name none that helps: the text stands there to be marked.
    tell(says.notCopied);
  }
}

/** Who orders, and the telephone: typed once, for every message. */
function Orderer(): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const field = (key: "contact" | "telephone", label: string, hint?: string): ReactNode => (
    <WordsField
      label={label}
      name={`order-${key}`}
      value={site.project?.[key]}
      {...(hint !== undefined && { hint })}
      onCommit={(value) => edit(says.whoStep(label), (now) => setProject(now, { [key]: value }))}
    />
  );
  return (
    <>
      {field("contact", says.who, site.project?.owner ?? says.whoHint)}
      {field("telephone", says.telephone)}
    </>
  );
}

/** What is ordered from one supplier, as a message to copy; nothing where nothing is ordered. */
export function MessageSection(): ReactNode {
  const messages = useMessages();
  const [chosen, setChosen] = useState<MessageTo>("yard");
  const to = messages.has(chosen) ? chosen : [...messages.keys()][0];
  if (to === undefined) return null;
  const text = messages.get(to) ?? "";
  return (
    <>
      <h2>{says.title}</h2>
      <p className="says">{says.says}</p>
      <Orderer />
      <ChoiceField
        label={says.to}
        name="message-to"
        value={to}
        choices={[...messages.keys()].map((id) => ({ id, name: words.orders.messages[id] }))}
        onChoose={setChosen}
      />
      <textarea
        className="order-text"
        aria-label={says.label}
        readOnly
        rows={Math.min(16, text.split("\n").length + 2)}
        value={text}
      />
      <div className="tools">
        <button type="button" className="button main" onClick={() => void copy(text)}>
          {says.copy}
        </button>
      </div>
    </>
  );
}
