import type { ReactNode } from "react";
import { fromEach, loadingUnit, loadingWords, onEach, percolation } from "../../handover/index.js";
import { sizingTables } from "../../estimate/index.js";
import type { Flow, Site, Work } from "../../site/index.js";
import { area, dailyFlow, length, liquidVolume } from "../../units/index.js";
import type { Measure } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { plain, whole } from "../fields/plain.js";
import { Findings } from "../Findings.js";
import type { Sizing } from "../parts.js";
import { useSite } from "../useSite.js";
import { QuantityWorking, Working } from "../Working.js";

import { useFlowChange, useScheme } from "./useFlow.js";
import { Term } from "../book/Term.js";

type Design = NonNullable<Flow["design"]>;
type Soil = NonNullable<Flow["soil"]>;

/** What comes in a day, what the soil takes, and whether tanks and field are large enough. */
export function SizingSection(): ReactNode {
  const { estimate, site } = useSite();
  const sizing = estimate?.flow.sizing;
  const { units } = site;
  const isEntered = useScheme()?.flow?.soil?.by === "rate";
  return (
    <section aria-label={words.flowLeaf.designFlowSizes}>
      <h2>
        <span>
          <Term id="designFlow">{words.flowLeaf.designFlow}</Term> {words.flowLeaf.and}{" "}
          <Term id="sizing">{words.flowLeaf.sizes}</Term>
        </span>
      </h2>
      <DesignFields />
      {sizing?.daily !== undefined && (
        <Working text={words.flowLeaf.comesDay} amount={dailyFlow.print(sizing.daily.value, units)}>
          <QuantityWorking quantity={sizing.daily} decimal />
        </Working>
      )}
      <SoilFields />
      <StateTables />
      {sizing?.loading !== undefined && (
        <Working
          text={isEntered ? words.flowLeaf.theFieldTakes : words.flowLeaf.theSoilTakes}
          amount={loadingWords(sizing.loading.value, units)}
        >
          <QuantityWorking quantity={sizing.loading} decimal />
        </Working>
      )}
      <FieldWorks />
      {sizing?.areaWanted !== undefined && (
        <Working
          text={words.flowLeaf.bottomWanted}
          amount={area.print(sizing.areaWanted.value, units)}
        >
          <QuantityWorking quantity={sizing.areaWanted} decimal />
        </Working>
      )}
      {sizing !== undefined && sizing.field.value > 0 && (
        <Working text={words.flowLeaf.bottomThereIs} amount={area.print(sizing.field.value, units)}>
          <QuantityWorking quantity={sizing.field} decimal />
        </Working>
      )}
      {sizing?.mounds.map((mound) => (
        <MoundLine key={mound.bed} mound={mound} />
      ))}
      {sizing?.leastTank !== undefined && (
        <Working
          text={words.flowLeaf.tankWanted}
          amount={liquidVolume.print(sizing.leastTank.value, units)}
        >
          <QuantityWorking quantity={sizing.leastTank} liquid decimal />
        </Working>
      )}
      {sizing !== undefined && (
        <Working
          text={words.flowLeaf.tanksHold}
          amount={liquidVolume.print(sizing.tanks.value, units)}
        >
          <QuantityWorking quantity={sizing.tanks} liquid decimal />
        </Working>
      )}
      <Findings
        findings={(estimate?.findings ?? []).filter((one) => one.code.startsWith("sizing."))}
      />
    </section>
  );
}

/** On a metric site: that a table in use is a US state's, and how its figures come to be metric. */
function StateTables(): ReactNode {
  const { units } = useSite().site;
  const flow = useScheme()?.flow;
  const soil = flow?.soil?.by;
  const inUse = flow?.design?.by === "bedrooms" || soil === "percolation" || soil === "class";
  if (units !== "metric" || !inUse) return null;
  return <p className="says">{words.flowLeaf.tableOfAState}</p>;
}

/** What a walled bed would cover as a mound with earth sides. */
function MoundLine({ mound }: { mound: Sizing["mounds"][number] }): ReactNode {
  const { units } = useSite().site;
  const { size, name } = mound;
  if (size === null) return null;
  return (
    <Working
      text={words.flowLeaf.asAMound(name)}
      amount={`${length.print(size.length.value, units)} × ${length.print(size.width.value, units)}`}
    >
      <p>{words.flowLeaf.whatBedWouldCover}</p>
      <QuantityWorking quantity={size.length} decimal />
      <QuantityWorking quantity={size.width} decimal />
    </Working>
  );
}

const DESIGN_WAYS = [
  { id: "none", name: words.flowLeaf.notSaidYet },
  { id: "daily", name: words.flowLeaf.flowDay },
  { id: "bedrooms", name: words.flowLeaf.bedroomsTable },
  { id: "people", name: words.flowLeaf.people },
  { id: "fixtures", name: words.flowLeaf.fixtures },
] as const;

/** A first design flow of each way to give it (m³/s over the day). */
function firstDesign(by: Design["by"], units: Site["units"]): Design {
  const day = (amount: number): number => dailyFlow.fromSystem(amount, units);
  switch (by) {
    case "daily":
      return { by, flow: day(units === "us" ? 450 : 1500) };
    case "bedrooms":
      return { by, bedrooms: 3 };
    case "people":
      return { by, people: 4, each: day(units === "us" ? 50 : 150) };
    case "fixtures":
      return {
        by,
        fixtures: [{ name: words.flowLeaf.shower, count: 1, each: day(units === "us" ? 50 : 190) }],
      };
  }
}

function DesignFields(): ReactNode {
  const { units } = useSite().site;
  const design = useScheme()?.flow?.design;
  const change = useFlowChange();
  const set = (next: Design | undefined): void =>
    change(words.flowLeaf.designFlowEdit, { design: next });
  return (
    <>
      <ChoiceField
        label={words.flowLeaf.reckonedFrom}
        name="design-by"
        value={design?.by ?? "none"}
        choices={DESIGN_WAYS}
        onChoose={(by) => set(by === "none" ? undefined : firstDesign(by, units))}
      />
      {design?.by === "daily" && (
        <MeasureField
          label={words.flowLeaf.flowADay}
          name="design-daily"
          value={design.flow}
          measure={dailyFlow}
          least={0}
          above
          onCommit={(flow) => set({ ...design, flow })}
        />
      )}
      {design?.by === "bedrooms" && <Bedrooms design={design} set={set} />}
      {design?.by === "people" && (
        <>
          <MeasureField
            label={words.flowLeaf.peopleLabel}
            name="design-people"
            value={design.people}
            measure={plain}
            least={0}
            above
            onCommit={(people) => set({ ...design, people })}
          />
          <MeasureField
            label={words.flowLeaf.eachADay}
            value={design.each}
            measure={dailyFlow}
            least={0}
            above
            onCommit={(each) => set({ ...design, each })}
          />
        </>
      )}
      {design?.by === "fixtures" && <Fixtures design={design} set={set} />}
    </>
  );
}

function Bedrooms(props: {
  design: Design & { by: "bedrooms" };
  set: (next: Design) => void;
}): ReactNode {
  const { design, set } = props;
  const tables = sizingTables().flows;
  return (
    <>
      <MeasureField
        label={words.flowLeaf.bedrooms}
        name="design-bedrooms"
        value={design.bedrooms}
        measure={whole}
        most={30}
        onCommit={(bedrooms) => set({ ...design, bedrooms })}
      />
      <ChoiceField
        label={words.flowLeaf.byTheTableOf}
        value={design.table ?? tables[0]?.id ?? ""}
        choices={tables}
        onChoose={(table) => set({ ...design, table })}
      />
    </>
  );
}

function Fixtures(props: {
  design: Design & { by: "fixtures" };
  set: (next: Design) => void;
}): ReactNode {
  const { design, set } = props;
  const { fixtures } = design;
  const put = (index: number, next: Partial<(typeof fixtures)[number]>): void =>
    set({
      ...design,
      fixtures: fixtures.map((one, i) => (i === index ? { ...one, ...next } : one)),
    });
  return fixtures.map((one, i) => (
    <fieldset key={one.name} aria-label={one.name}>
      <MeasureField
        label={words.flowLeaf.howMany(one.name)}
        value={one.count}
        measure={whole}
        onCommit={(count) => put(i, { count })}
      />
      <MeasureField
        label={words.flowLeaf.eachADay}
        value={one.each}
        measure={dailyFlow}
        least={0}
        above
        onCommit={(each) => put(i, { each })}
      />
    </fieldset>
  ));
}

const SOIL_WAYS = [
  { id: "none", name: words.flowLeaf.notSaidYet },
  { id: "percolation", name: words.flowLeaf.aPercolationTest },
  { id: "class", name: words.flowLeaf.classSoil },
  { id: "rate", name: words.flowLeaf.rateYourOwn },
] as const;

function firstSoil(by: Soil["by"], units: Site["units"]): Soil {
  switch (by) {
    case "percolation":
      return { by, rate: 20 * percolation("us").size };
    case "class":
      return { by, class: sizingTables().classes[0]?.rows[0]?.id ?? "1" };
    case "rate":
      return { by, rate: fromEach(units === "us" ? 0.6 : 24, units) };
  }
}

function SoilFields(): ReactNode {
  const { units } = useSite().site;
  const soil = useScheme()?.flow?.soil;
  const change = useFlowChange();
  const set = (next: Soil | undefined): void => change(words.flowLeaf.soilEdit, { soil: next });
  const tables = sizingTables();
  return (
    <>
      <ChoiceField
        label={words.flowLeaf.soilKnownBy}
        name="soil-by"
        value={soil?.by ?? "none"}
        choices={SOIL_WAYS}
        onChoose={(by) => set(by === "none" ? undefined : firstSoil(by, units))}
      />
      {soil?.by === "percolation" && (
        <>
          <MeasureField
            label={words.flowLeaf.fallsIn(percolation(units).unit)}
            name="percolation"
            value={soil.rate}
            measure={scaled(percolation(units).size)}
            least={0}
            above
            onCommit={(rate) => set({ ...soil, rate })}
          />
          <ChoiceField
            label={words.flowLeaf.byTheTableOf}
            value={soil.table ?? tables.loading[0]?.id ?? ""}
            choices={tables.loading}
            onChoose={(table) => set({ ...soil, table })}
          />
        </>
      )}
      {soil?.by === "class" && <SoilClass soil={soil} set={set} />}
      {soil?.by === "rate" && (
        <MeasureField
          label={words.flowLeaf.takesIn(loadingUnit(units))}
          name="loading"
          value={soil.rate}
          measure={{ ...plain, ...perUnit(units) }}
          least={0}
          above
          onCommit={(rate) => set({ by: "rate", rate })}
        />
      )}
    </>
  );
}

function SoilClass(props: { soil: Soil & { by: "class" }; set: (next: Soil) => void }): ReactNode {
  const { soil, set } = props;
  const { classes } = sizingTables();
  const table = classes.find((one) => one.id === soil.table) ?? classes[0];
  return (
    <>
      <ChoiceField
        label={words.flowLeaf.byTheTableOf}
        value={table?.id ?? ""}
        choices={classes}
        onChoose={(id) => {
          const first = classes.find((one) => one.id === id)?.rows[0];
          if (first !== undefined) set({ by: "class", table: id, class: first.id });
        }}
      />
      <ChoiceField
        label={words.flowLeaf.class}
        name="soil-class"
        value={soil.class}
        choices={table?.rows ?? []}
        onChoose={(id) => set({ ...soil, class: id })}
      />
    </>
  );
}

/** A plain number shown in another size: `size` SI for one. */
function scaled(size: number): Measure {
  return {
    ...plain,
    parse: (text, system) => {
      const read = plain.parse(text, system);
      return read.ok ? { ok: true, value: read.value * size } : read;
    },
    print: (value, system) => plain.print(value / size, system),
    toSystem: (value) => value / size,
    fromSystem: (value) => value * size,
  };
}

function perUnit(units: Site["units"]): Omit<Measure, "kind" | "unitLabel"> {
  return {
    toSystem: (value) => onEach(value, units),
    fromSystem: (value) => fromEach(value, units),
    parse: (text, system) => {
      const read = plain.parse(text, system);
      return read.ok ? { ok: true, value: fromEach(read.value, units) } : read;
    },
    print: (value, system) => plain.print(onEach(value, units), system),
  };
}

/** Which works' bottoms take the water. */
function FieldWorks(): ReactNode {
  const scheme = useScheme();
  const change = useFlowChange();
  const works = (scheme?.works ?? []).filter(canTake);
  const field = new Set(scheme?.flow?.field ?? []);
  if (works.length === 0) return null;
  const toggle = (id: string, on: boolean): void => {
    const next = works.map((work) => work.id).filter((one) => (one === id ? on : field.has(one)));
    change(words.flowLeaf.fieldEdit, { field: next.length > 0 ? next : undefined });
  };
  return (
    <fieldset aria-label={words.flowLeaf.whatTakesWater}>
      <h3>{words.flowLeaf.whatTakesWater}</h3>
      {works.map((work) => (
        <label className="tick" key={work.id}>
          <input
            type="checkbox"
            checked={field.has(work.id)}
            onChange={(event) => toggle(work.id, event.target.checked)}
          />
          {work.name}
        </label>
      ))}
    </fieldset>
  );
}

const canTake = (work: Work): boolean =>
  work.kind === "bed" || work.kind === "pad" || work.kind === "trench";
