import { useRef } from "react";
import type { ReactNode } from "react";
import { Button, ListBox, ListBoxItem } from "react-aria-components";
import { MOST_STEPS } from "../../site/index.js";
import { listedSteps, useDesk } from "../../store/index.js";
import type { ListedStep } from "../../store/index.js";
import { money } from "../../units/index.js";
import { words } from "../../words/index.js";
import { BookPanel } from "./BookPanel.js";
import { StepsIcon } from "./icons.js";
import { closePanel, openPanel, usePanels } from "./panels.js";

const says = words.book.steps;

/** The change in cost that a step made; nothing where it is not known. */
function Change({ change }: { change: number | null }): ReactNode {
  const site = useDesk((desk) => desk.history?.present ?? null);
  if (change === null || site === null) return null;
  const amount = money(site.currency).print(Math.abs(change), site.units);
  if (!/[1-9]/.test(amount)) return <span className="soft">{says.same}</span>;
  return (
    <span className={change > 0 ? "dearer" : "cheaper"}>
      {change > 0 ? says.more(amount) : says.less(amount)}
    </span>
  );
}

function nameOf(step: ListedStep, count: number): string {
  if (step.name !== null) return step.name;
  return count > MOST_STEPS ? says.earlier : says.atFirst;
}

function List(): ReactNode {
  const history = useDesk((desk) => desk.history);
  const schemeId = useDesk((desk) => desk.schemeId);
  // The figures come with the step or after it.
  useDesk((desk) => desk.figures);
  const stepTo = useDesk((desk) => desk.stepTo);
  if (history === null) return null;
  const steps = listedSteps(history, schemeId);
  if (steps.length === 1) return <p className="says">{says.none}</p>;
  const newestFirst = steps.map((step, index) => ({ step, index })).reverse();
  return (
    <>
      <p className="says">{says.says}</p>
      <ListBox
        className="step-list"
        aria-label={says.list}
        autoFocus
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[String(history.past.length)]}
        onSelectionChange={(keys) => {
          const [key] = keys === "all" ? [] : keys;
          if (key !== undefined) stepTo(Number(key));
        }}
      >
        {newestFirst.map(({ step, index }) => {
          const name = nameOf(step, steps.length);
          return (
            <ListBoxItem
              key={index}
              id={String(index)}
              textValue={name}
              className={`step-row ${step.where}`}
            >
              <span className="step-name">{name}</span>
              <span className="step-side">
                {step.where === "now" && <strong>{says.now}</strong>}
                {step.where === "undone" && <span className="soft">{says.undone}</span>}
                <Change change={step.change} />
              </span>
            </ListBoxItem>
          );
        })}
      </ListBox>
    </>
  );
}

/** The steps of the work by name, with what each changed in cost; choosing one goes there. */
export function StepsButton(): ReactNode {
  const open = usePanels((panels) => panels.open === "steps");
  const hasSite = useDesk((desk) => desk.history !== null);
  const button = useRef<HTMLButtonElement>(null);
  return (
    <>
      <Button
        ref={button}
        className="round steps-button"
        aria-label={says.title}
        aria-expanded={open}
        isDisabled={!hasSite}
        onPress={() => (open ? closePanel("steps") : openPanel("steps"))}
      >
        <StepsIcon />
      </Button>
      <BookPanel panel="steps" title={says.title} button={button}>
        <List />
      </BookPanel>
    </>
  );
}
