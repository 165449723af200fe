import type { ReactNode } from "react";
import { freshId, PRICE_UNITS, setCosts } from "../../site/index.js";
import type { OwnLine, Scheme } from "../../site/index.js";
import { haulMass, money } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { NameField } from "../fields/NameField.js";
import { plain } from "../fields/plain.js";
import { ShareField } from "../fields/ShareField.js";
import { useEdit, useSite } from "../useSite.js";
import { Working } from "../Working.js";
import { perOf } from "../../handover/index.js";

/** Lines of the person's own, and what is added to every line: waste, the least load, tax. */
export function OwnLines({ scheme }: { scheme: Scheme }): ReactNode {
  const { site, schemeId } = useSite();
  const edit = useEdit();
  const lines = scheme.costs?.lines ?? [];
  const add = (): void => {
    const id = freshId(
      site,
      "line",
      lines.map((line) => line.id),
    );
    const line: OwnLine = { id, name: words.costLeaf.newLine, per: "lump", count: 1, price: 0 };
    edit(words.costLeaf.addLineCostEdit, (now) =>
      setCosts(now, schemeId, { lines: [...lines, line] }),
    );
  };
  return (
    <section aria-label={words.costLeaf.linesYourOwn}>
      <h2>{words.costLeaf.yourOwnLinesWaste}</h2>
      {lines.map((line) => (
        <OneLine key={line.id} line={line} lines={lines} />
      ))}
      <button type="button" className="link" onClick={add}>
        {words.costLeaf.addLineYourOwn}
      </button>
      <Additions costs={scheme.costs} />
    </section>
  );
}

function OneLine({ line, lines }: { line: OwnLine; lines: readonly OwnLine[] }): ReactNode {
  const { site, schemeId } = useSite();
  const edit = useEdit();
  const { units, currency } = site;
  const per = perOf(line.per, units);
  const save = (what: string, next: OwnLine | null): void =>
    edit(what, (now) =>
      setCosts(now, schemeId, {
        lines: lines.flatMap((one) => (one.id !== line.id ? [one] : next === null ? [] : [next])),
      }),
    );
  const change = (next: Partial<OwnLine>): void =>
    save(words.costLeaf.changeEdit(line.name), { ...line, ...next });
  const without = (key: "low" | "high"): void => {
    const kept = Object.entries(line).filter(([name]) => name !== key);
    save(words.costLeaf.changeEdit(line.name), Object.fromEntries(kept) as unknown as OwnLine);
  };
  const priceField = (key: "price" | "low" | "high", label: string): ReactNode => (
    <MeasureField
      label={label}
      name={`own-${line.id}-${key}`}
      value={line[key] === undefined ? undefined : line[key] * per.size}
      measure={money(currency)}
      print={{ digits: 2 }}
      least={0}
      {...(key === "price"
        ? {}
        : { onClear: () => without(key), usual: words.costLeaf.asThePrice })}
      onCommit={(value) => change({ [key]: value / per.size })}
    />
  );
  return (
    <Working text={line.name} amount={money(currency).print(line.count * line.price, units)}>
      <div className="form">
        <NameField
          label={words.costLeaf.whatItIs}
          name={`own-${line.id}-name`}
          value={line.name}
          onCommit={(name) => change({ name })}
        />
        <ChoiceField
          label={words.costLeaf.pricedForOne}
          name={`own-${line.id}-per`}
          value={line.per}
          choices={PRICE_UNITS.map((id) => ({ id, name: perOf(id, units).words }))}
          onChoose={(next) => change({ per: next })}
        />
        <MeasureField
          label={words.costLeaf.howMany}
          name={`own-${line.id}-count`}
          value={line.count / per.size}
          measure={plain}
          onCommit={(count) => change({ count: count * per.size })}
        />
        {priceField("price", words.costLeaf.price)}
        {priceField("low", words.costLeaf.atLeast)}
        {priceField("high", words.costLeaf.atMost)}
        <button
          type="button"
          className="link"
          onClick={() => save(words.costLeaf.removeEdit(line.name), null)}
        >
          {words.costLeaf.removeThisLine}
        </button>
      </div>
    </Working>
  );
}

function Additions({ costs }: { costs: Scheme["costs"] }): ReactNode {
  const { schemeId } = useSite();
  const edit = useEdit();
  const set = (what: string, choice: Parameters<typeof setCosts>[2]): void =>
    edit(what, (now) => setCosts(now, schemeId, choice));
  return (
    <div className="form">
      <ShareField
        label={words.costLeaf.wasteOrderedTop}
        name="waste"
        value={costs?.waste}
        most={1}
        usual={words.costLeaf.none}
        onCommit={(waste) => set(words.costLeaf.wasteEdit, { waste })}
        onClear={() => set(words.costLeaf.wasteEdit, { waste: undefined })}
      />
      <MeasureField
        label={words.costLeaf.leastLoadCharged}
        name="least-load"
        value={costs?.leastLoad}
        measure={haulMass}
        least={0}
        usual={words.costLeaf.none}
        onCommit={(leastLoad) => set(words.costLeaf.leastLoadEdit, { leastLoad })}
        onClear={() => set(words.costLeaf.leastLoadEdit, { leastLoad: undefined })}
      />
      <ShareField
        label={words.costLeaf.taxEveryLine}
        name="tax"
        value={costs?.tax}
        most={1}
        usual={words.costLeaf.none}
        onCommit={(tax) => set(words.costLeaf.taxEdit, { tax })}
        onClear={() => set(words.costLeaf.taxEdit, { tax: undefined })}
      />
    </div>
  );
}
