import type { ReactNode } from "react";
import { setProject } from "../../site/index.js";
import type { Project } from "../../site/index.js";
import { words } from "../../words/index.js";
import { useEdit, useSite } from "../useSite.js";
import { isIsoDay } from "./isoDay.js";
import { WordsField } from "./WordsField.js";

const says = words.permit.project;

type Change = { [K in keyof Project]?: Project[K] | undefined };

/** Who, where and when of the plan, as an office asks for it. */
export function ProjectSection(): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const project = site.project ?? {};
  const change = (what: string, next: Change): void =>
    edit(says.step(what), (now) => setProject(now, next));
  const field = (key: "owner" | "parcel" | "place" | "preparer"): ReactNode => (
    <WordsField
      label={says[key]}
      name={`project-${key}`}
      value={project[key]}
      onCommit={(value) => change(says[key], { [key]: value })}
    />
  );
  return (
    <div className="project-fields">
      <h2>
        {says.title} <span className="aside">{says.aside}</span>
      </h2>
      {field("owner")}
      {field("parcel")}
      {field("place")}
      {field("preparer")}
      <WordsField
        label={says.date}
        name="project-date"
        value={project.date}
        hint={says.dateHint}
        wrong={(typed) => (isIsoDay(typed) ? null : says.dateWrong(typed))}
        onCommit={(date) => change(says.date, { date })}
      />
      <BenchmarkFields
        mark={project.benchmark ?? {}}
        onChange={(what, benchmark) => change(what, { benchmark })}
      />
    </div>
  );
}

type Mark = NonNullable<Project["benchmark"]>;

/** The point that heights were carried from, and what it is. */
function BenchmarkFields(props: {
  mark: Mark;
  onChange: (what: string, mark: Mark | undefined) => void;
}): ReactNode {
  const { mark, onChange } = props;
  const { site } = useSite();
  const set = (
    what: string,
    next: { point?: string | undefined; note?: string | undefined },
  ): void => {
    const { point, note } = { ...mark, ...next };
    const kept = { ...(point !== undefined && { point }), ...(note !== undefined && { note }) };
    onChange(what, Object.keys(kept).length === 0 ? undefined : kept);
  };
  return (
    <>
      <WordsField
        label={says.benchmark}
        name="project-benchmark"
        value={mark.point}
        wrong={(typed) =>
          site.survey.points.some(({ id }) => id === typed) ? null : says.benchmarkUnknown(typed)
        }
        onCommit={(point) => set(says.benchmark, { point })}
      />
      <WordsField
        label={says.benchmarkNote}
        name="project-benchmark-note"
        value={mark.note}
        hint={says.benchmarkHint}
        onCommit={(note) => set(says.benchmarkNote, { note })}
      />
    </>
  );
}
