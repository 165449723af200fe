import type { ReactNode } from "react";
import type { Candidate, Machines, Range } from "../parts.js";
import { leaveDiggerOpen, setMachines } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { hours, money, plainNumber } from "../../units/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { words } from "../../words/index.js";
import { Empty, PlaceButton } from "../Empty.js";
import { Findings } from "../Findings.js";
import { useEdit, useSite } from "../useSite.js";
import { QuantityWorking, Working } from "../Working.js";
import { AccessFields } from "./AccessFields.js";
import { DiggerFields } from "./DiggerFields.js";
import { isOfLines, LinesSection } from "./LinesSection.js";
import { LiftSection } from "./LiftSection.js";
import { MoreReasons } from "./MoreReasons.js";
import { coverWords } from "./coverWords.js";
import { DaysSection } from "./DaysSection.js";
import { HiresSection } from "./HiresSection.js";

const says = words.sums.digger;

/** h: work that takes less does not show in the list. */
const LEAST_HOURS = 0.05;

/** A phrase of the engine begun as a sentence. */
const sentence = (phrase: string): string => phrase.charAt(0).toUpperCase() + phrase.slice(1);

function useRange(): {
  cost: (range: Range) => string;
  count: (range: Range, digits: number) => string;
} {
  const { units, currency } = useSite().site;
  const print = (value: number): string => money(currency).print(value, units);
  return {
    cost: ({ low, likely, high }) =>
      low === high ? print(low) : `${print(likely)} (${print(low)}–${print(high)})`,
    count: ({ low, high }, digits) =>
      low === high
        ? plainNumber(low, digits)
        : `${plainNumber(low, digits)}–${plainNumber(high, digits)}`,
  };
}

function CandidateRow({ candidate, chosen }: { candidate: Candidate; chosen: boolean }): ReactNode {
  const { site, schemeId } = useSite();
  const edit = useEdit();
  const { cost } = useRange();
  return (
    <li
      className={`candidate ${candidate.can ? "" : words.machinesLeaf.cannot}`}
      data-digger={candidate.id}
    >
      <button
        type="button"
        className="row"
        aria-pressed={chosen}
        onClick={() =>
          edit(words.machinesLeaf.chooseEdit(candidate.name), (site) =>
            setMachines(site, schemeId, { digger: candidate.id }),
          )
        }
      >
        <span aria-hidden="true">{candidate.can ? "✓" : "✕"}</span>
        <span className="text">{candidate.name}</span>
        <span className="amount">
          {candidate.can
            ? says.days(plainNumber(candidate.jobDays ?? NaN, 0))
            : words.machinesLeaf.cannot}
        </span>
      </button>
      <p className="reason">
        {candidate.can &&
          says.compared(
            money(site.currency).print(candidate.whole ?? NaN, site.units),
            cost(candidate.price),
            words.counts.days(
              candidate.calendarDays ?? NaN,
              plainNumber(candidate.calendarDays ?? NaN, 0),
            ),
          )}
        {candidate.can ? candidate.reason : sentence(candidate.reason)}
      </p>
      <MoreReasons candidate={candidate} />
    </li>
  );
}

/** The digger by hand, or left to the estimate. */
function DiggerChoice({ machines }: { machines: Machines }): ReactNode {
  const { site, schemeId } = useSite();
  const edit = useEdit();
  const { digger, candidates } = machines;
  const named = site.schemes.find(({ id }) => id === schemeId)?.machines?.digger ?? "";
  const isOpen = named === "" && candidates.some(({ can }) => can);
  return (
    <ChoiceField
      label={words.machinesLeaf.digger}
      name="digger"
      value={named}
      choices={[
        { id: "", name: isOpen ? says.cheapest(digger.name) : says.cheapestNone },
        ...candidates.map(({ id, name, can }) => ({
          id,
          name: can ? name : words.machinesLeaf.optionCannot(name),
        })),
      ]}
      onChoose={(id) =>
        id === ""
          ? edit(says.takeCheapest, (now) => leaveDiggerOpen(now, schemeId))
          : edit(words.machinesLeaf.chooseTheDiggerEdit, (now) =>
              setMachines(now, schemeId, { digger: id }),
            )
      }
    />
  );
}

/** The answer for the yard in one sentence. */
function Answer({ machines }: { machines: Machines }): ReactNode {
  const { digger, days, job } = machines;
  const hire = job.hires.find(({ id }) => id === digger.id);
  if (hire === undefined) return null;
  const { likely } = job.schedule;
  const periods = hire.plans.likely.stays.map(({ cover }) => coverWords(cover)).join(", then ");
  return (
    <p className="answer">
      <strong>{words.machinesLeaf.rentFor(digger.name, periods)}</strong>{" "}
      {words.machinesLeaf.worksJobsWhichTake(
        words.counts.days(days.likely, plainNumber(days.likely, 0)),
        words.counts.workingDays(likely.workingDays, plainNumber(likely.workingDays, 0)),
        words.counts.calendarDays(likely.calendarDays, plainNumber(likely.calendarDays, 0)),
      )}
    </p>
  );
}

/** Before there is a work: what can be said of the machines and the way in already. */
function NothingToDig(): ReactNode {
  return (
    <>
      <Empty title={words.book.empty.machinesTitle} text={words.book.empty.machines}>
        <PlaceButton kind="tank" text={words.book.empty.placeTank} />
      </Empty>
      <DiggerFields />
      <AccessFields />
    </>
  );
}

/** Which machine digs, how long it takes in each work, and how it is hired. */
export function MachinesLeaf(): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const edit = useEdit();
  const { count } = useRange();
  const before = useDesk((desk) => desk.before);
  if (estimate === null) return <p className="says">{words.machinesLeaf.thereNoEstimateChoose}</p>;
  const { machines } = estimate;
  if (estimate.works.length === 0) return <NothingToDig />;
  return (
    <>
      <DiggerChoice machines={machines} />
      <MeasureField
        label={words.machinesLeaf.hoursWorkedDay}
        name="hours-per-day"
        value={machines.hoursPerDay}
        measure={hours}
        least={0}
        above
        onCommit={(hoursPerDay) =>
          edit(words.machinesLeaf.hoursDayEdit, (now) =>
            setMachines(now, schemeId, { hoursPerDay }),
          )
        }
      />
      <p className="says">{sentence(machines.digger.reason)}.</p>
      <Answer machines={machines} />
      {before !== null && before.digger.id !== machines.digger.id && (
        <p role="status">
          <strong>{words.machinesLeaf.diggerChangedWithLast}</strong>{" "}
          {words.machinesLeaf.beforeNowDaysHire(before.digger.name, machines.digger.name)}
        </p>
      )}
      <Findings findings={machines.findings.filter((one) => !isOfLines(one))} />

      <h2>
        {words.machinesLeaf.time} <span className="aside">{words.machinesLeaf.lowHigh}</span>
      </h2>
      <Working
        text={words.machinesLeaf.machineHours}
        amount={words.machinesLeaf.hours(count(machines.hours, 1))}
      >
        <QuantityWorking quantity={machines.working.hours} />
      </Working>
      <Working
        text={words.machinesLeaf.workingDays}
        amount={words.machinesLeaf.daysShort(count(machines.days, 0))}
      >
        <QuantityWorking quantity={machines.working.days} />
      </Working>
      {machines.works
        .filter((work) => work.hours.likely >= LEAST_HOURS)
        .map((work) => (
          <Working
            key={work.id}
            text={work.name}
            amount={words.machinesLeaf.hours(count(work.hours, 1))}
          >
            <p>{words.machinesLeaf.likely(hours.print(work.hours.likely, site.units))}</p>
            {work.materials.map((part) => (
              <QuantityWorking key={`${part.material} ${part.action}`} quantity={part.working} />
            ))}
          </Working>
        ))}
      {machines.byHand.map((part) => (
        <Working
          key={`${part.work} ${part.limit}`}
          text={words.machinesLeaf.byHandBeside(part.name, part.limitName)}
          amount={words.machinesLeaf.hours(count(part.hours, 1))}
        >
          <QuantityWorking quantity={part.working} />
        </Working>
      ))}
      {machines.setUp.high > 0 && (
        <Working
          text={words.machinesLeaf.settingUpOnce}
          amount={words.machinesLeaf.hours(count(machines.setUp, 1))}
        >
          <p>{words.machinesLeaf.likely(hours.print(machines.setUp.likely, site.units))}</p>
        </Working>
      )}
      {machines.left !== undefined && (
        <Working
          text={machines.left.name}
          amount={words.machinesLeaf.hours(count(machines.left.hours, 1))}
        >
          <p>{words.machinesLeaf.likely(hours.print(machines.left.hours.likely, site.units))}</p>
          <p className="soft">{machines.left.source}</p>
        </Working>
      )}

      <LinesSection />
      <DaysSection job={machines.job} />
      <HiresSection hires={machines.job.hires} />

      <h2>{words.machinesLeaf.machinesHeldAgainstJob}</h2>
      <p className="soft">{says.says}</p>
      <ul>
        {machines.candidates.map((candidate) => (
          <CandidateRow
            key={candidate.id}
            candidate={candidate}
            chosen={candidate.id === machines.digger.id}
          />
        ))}
      </ul>
      <DiggerFields />
      <AccessFields />
      <LiftSection />
    </>
  );
}
