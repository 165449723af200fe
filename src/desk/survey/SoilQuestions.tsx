import type { ReactNode } from "react";
import { Label, RadioButton, RadioField, RadioGroup } from "react-aria-components";
import { classRun, layerClass, ruleOf, setLayer, soilClass, without } from "../../site/index.js";
import type { Layer, SoilAnswers } from "../../site/index.js";
import { wallSlope } from "../../units/index.js";
import { words } from "../../words/index.js";
import { useEdit, useSite } from "../useSite.js";

type Question = keyof SoilAnswers;
type Answer = string | boolean | undefined;

const SOIL: readonly Question[] = [
  "grain",
  "strength",
  "water",
  "fissured",
  "shaken",
  "disturbed",
  "dips",
];
const ROCK: readonly Question[] = ["rock", "water", "dips"];

/**
 * The questions to show: those answered and the one that the class waits for. What is answered but
 * no longer asked (of rock that turned out to be soil) stays in the file and out of sight.
 */
function shownQuestions(soil: SoilAnswers): Question[] {
  const { ask } = soilClass(soil);
  const about = soil.ground === "rock" ? ROCK : soil.ground === "soil" ? SOIL : [];
  const fractured = soil.ground === "rock" && soil.rock === "fractured";
  const wanted = (one: Question): boolean =>
    one === "ground" ||
    one === ask ||
    soil[one] !== undefined ||
    (one === "dips" && fractured && soil.water === "dry");
  const fits = (one: Question): boolean => one !== "strength" || soil.grain === "cohesive";
  return ["ground" as const, ...about].filter((one) => wanted(one) && fits(one));
}

const { soil: said } = words.trench;

/** Answers of a question by id, in the order in which they are offered. */
function answersOf(question: Question): readonly (readonly [id: string, name: string])[] {
  const named = Object.entries<string>(said.questions[question]).filter(([id]) => id !== "ask");
  return named.length > 0
    ? named
    : [
        ["yes", said.yes],
        ["no", said.no],
      ];
}

function idOf(answer: Answer): string {
  if (answer === undefined) return "";
  return typeof answer === "boolean" ? (answer ? "yes" : "no") : answer;
}

function withAnswer(soil: SoilAnswers, question: Question, id: string): SoilAnswers {
  const rest: SoilAnswers = without(soil, question);
  if (id === "") return rest;
  const yesNo = question === "fissured" || question === "shaken" || question === "disturbed";
  return { ...rest, [question]: yesNo ? id === "yes" : id };
}

/** A step of the history: the question, and the answer without what explains it. */
function stepFor(layer: string, question: Question, id: string): string {
  const name = answersOf(question).find(([one]) => one === id)?.[1] ?? said.open;
  return said.stepOf(layer, said.questions[question].ask, name.split(":")[0] ?? name);
}

interface QuestionProps {
  question: Question;
  value: Answer;
  onAnswer: (id: string) => void;
}

function OneQuestion({ question, value, onAnswer }: QuestionProps): ReactNode {
  return (
    <RadioGroup
      className="soil-question"
      data-question={question}
      value={idOf(value)}
      onChange={onAnswer}
    >
      <Label>{said.questions[question].ask}</Label>
      {[...answersOf(question), ["", said.open] as const].map(([id, name]) => (
        <RadioField key={id} value={id}>
          <RadioButton className="soil-answer">{name}</RadioButton>
        </RadioField>
      ))}
    </RadioGroup>
  );
}

/** What class a layer is of as the wall of a hole, why, and the questions that say so. */
export function SoilQuestions({ layer }: { layer: Layer }): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const soil = layer.soil ?? {};
  const { id, because } = layerClass(layer);
  const change = (step: string, next: SoilAnswers): void =>
    edit(step, (now) =>
      setLayer(now, layer.id, ({ soil: _, ...one }) =>
        Object.keys(next).length === 0 ? one : { ...one, soil: next },
      ),
    );
  const slope = (run: number): string => wallSlope.print(run, site.units);
  return (
    <section className="soil" aria-label={`${said.title}: ${layer.name}`}>
      <h3>{said.title}</h3>
      <p className="says">{said.intro}</p>
      {shownQuestions(soil).map((question) => (
        <OneQuestion
          key={question}
          question={question}
          value={soil[question]}
          onAnswer={(answer) =>
            change(stepFor(layer.name, question, answer), withAnswer(soil, question, answer))
          }
        />
      ))}
      <p className="soil-class" role="status" data-class={id}>
        {id === "untyped" ? (
          <>
            <strong>{words.trench.classes.untyped}.</strong>{" "}
            {said.untypedSays(slope(ruleOf(site, "untyped-run").value))}
          </>
        ) : (
          <>
            <strong>{said.stands(words.trench.classes[id], slope(classRun(id)))}.</strong>{" "}
            {said.because(because)}
          </>
        )}
      </p>
      <p className="says fine">{said.source}</p>
      {layer.soil !== undefined && (
        <button
          type="button"
          className="link"
          onClick={() => change(said.stepClear(layer.name), {})}
        >
          {said.clear}
        </button>
      )}
    </section>
  );
}
