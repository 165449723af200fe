import type { ReactNode } from "react";
import { asksLessThanFederal, publishedRule, rulesOf, setLocalRule } from "../../site/index.js";
import type { LocalRule, Rule } from "../../site/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useEdit, useSite } from "../useSite.js";
import { ruleMeasure } from "./ruleMeasure.js";
import { WordsField } from "./WordsField.js";

const says = words.permit.rules;

/** The numbers at which published rules begin, and the local ones in their place. */
export function RulesSection(): ReactNode {
  const { site } = useSite();
  const rules = rulesOf(site);
  const groups = [...new Set(rules.map(({ group }) => group))];
  return (
    <section aria-label={says.title} data-rules="">
      <h2>
        {says.title} <span className="aside">{says.aside}</span>
      </h2>
      <p className="says">{says.says}</p>
      {groups.map((group) => (
        <Group
          key={group}
          title={says.groups[group] ?? group}
          rules={rules.filter((rule) => rule.group === group)}
        />
      ))}
    </section>
  );
}

function Group({ title, rules }: { title: string; rules: readonly Rule[] }): ReactNode {
  const local = rules.filter((rule) => rule.local).length;
  return (
    <details className="working rule-group">
      <summary>
        <span className="text">{title}</span>
        <span className="amount">{local > 0 ? says.local(local) : says.published}</span>
      </summary>
      <div className="rule-list">
        {rules.map((rule) => (
          <RuleFields key={rule.id} rule={rule} />
        ))}
      </div>
    </details>
  );
}

/** One rule: its published number and source, and the local number with its own. */
function RuleFields({ rule }: { rule: Rule }): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const { id, title } = rule;
  const published = publishedRule(id);
  const local = site.rules?.find((one) => one.id === id);
  const set = (step: string, next: Omit<LocalRule, "id"> | null): void =>
    edit(step, (now) => setLocalRule(now, id, next));
  return (
    <div className="rule" data-rule={id} data-local={local === undefined ? undefined : ""}>
      <MeasureField
        label={title}
        name={`rule-${id}`}
        value={local?.value}
        usual={published.value}
        measure={ruleMeasure(rule)}
        least={0}
        onCommit={(value) => set(says.step(title), { ...local, value })}
        onClear={() => local !== undefined && set(says.stepBack(title), null)}
        note={says.quoted(published.says, published.source)}
      />
      {asksLessThanFederal(rule) && <p className="wrong-note">{says.asksLess}</p>}
      {local !== undefined && (
        <>
          <WordsField
            label={says.source}
            name={`rule-source-${id}`}
            value={local.source}
            hint={says.sourceHint}
            onCommit={(source) => {
              const { value } = local;
              set(says.stepSource(title), source === undefined ? { value } : { value, source });
            }}
          />
          <button
            type="button"
            className="link"
            data-rule-back={id}
            onClick={() => set(says.stepBack(title), null)}
          >
            {says.back}
            <span className="unseen">: {title}</span>
          </button>
        </>
      )}
    </div>
  );
}
