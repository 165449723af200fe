/** Quantities: works, materials, earth, pipes. */
import { boreSize, looseOf, putInOf, type Estimate } from "../../estimate/index.js";
import { NATIVE, type Site } from "../../site/index.js";
import {
  area,
  distance,
  earthVolume,
  elevation,
  haulMass,
  length,
  pipeSlope,
  plainNumber,
} from "../../units/index.js";
import { words } from "../../words/index.js";
import { nameOfMaterial } from "../earthNames.js";
import type { SheetJob, SheetMaker } from "../paper.js";
import { listSheets } from "./listSheets.js";
import type { Table, TableRow } from "../table.js";

const says = words.handoverLeaf;
const own = words.sheetsLists;

/** Quantities over as many sheets as they take; none where nothing is built. */
export const quantitySheets: SheetMaker = (job, room) => {
  if (job.estimate.works.length === 0) return [];
  const tables = [
    worksTable(job),
    dugTable(job),
    putInTable(job),
    earthTable(job),
    landTable(job),
    pipesTable(job),
    byWorkTable(job),
  ];
  return listSheets(
    job,
    room,
    "quantities",
    own.quantities,
    tables.filter(({ rows }) => rows.length > 0),
  );
};

const sumOf = (volumes: Readonly<Record<string, number>>): number =>
  Object.values(volumes).reduce((sum, volume) => sum + volume, 0);

const NONE = "–";

const movesEarth = ({ cut, fill, daylight }: Estimate["works"][number]): boolean =>
  daylight > 0 || sumOf(cut) > 0 || sumOf(fill) > 0;

/** Own earth is dug again where it was put back before. */
function dugName(site: Site, id: string): string {
  return id === NATIVE ? words.desk.earlierBackfill : nameOfMaterial(site, id);
}

function worksTable({ site, estimate }: SheetJob): Table {
  const { units } = site;
  const volume = (value: number): string => (value > 0 ? earthVolume.print(value, units) : NONE);
  return {
    title: says.worksBuildingOrder,
    columns: [
      { head: says.work },
      { head: says.cutBankColumn, figures: true },
      { head: says.putIn, figures: true },
      { head: says.deepest, figures: true },
      { head: says.floor, figures: true },
    ],
    // What neither digs nor fills has nothing to say here.
    rows: estimate.works.filter(movesEarth).map((work): TableRow => {
      const dug = work.daylight > 0;
      return {
        cells: [
          work.name,
          volume(sumOf(work.cut)),
          volume(sumOf(work.fill)),
          dug ? length.print(work.deepest, units) : NONE,
          dug ? elevation.print(work.floor.lowest, units) : NONE,
        ],
      };
    }),
  };
}

function dugTable({ site, estimate }: SheetJob): Table {
  const { units } = site;
  const cut = Object.entries(estimate.cut).filter(([, volume]) => volume > 0);
  const rows = cut.map(([id, volume]): TableRow => {
    return {
      cells: [
        dugName(site, id),
        earthVolume.print(volume, units),
        earthVolume.print(looseOf(site, estimate, id, volume), units),
      ],
    };
  });
  const sum: TableRow = {
    kind: "sum",
    cells: [
      says.dugInAll,
      earthVolume.print(estimate.earth.bank, units),
      earthVolume.print(estimate.earth.loose, units),
    ],
  };
  return {
    title: says.dugByMaterial,
    columns: [
      { head: own.what },
      { head: says.bank, figures: true },
      { head: says.loose, figures: true },
    ],
    rows: rows.length === 0 ? [] : [...rows, sum],
  };
}

function putInTable({ site, estimate }: SheetJob): Table {
  const { units } = site;
  const put = putInOf(estimate);
  const rows = put.map(({ material: id, volume, shortfall }): TableRow => {
    const load = estimate.cost.loads.imports.find(({ material }) => material === id);
    const name = nameOfMaterial(site, id);
    return {
      cells: [
        shortfall > 0 ? own.boughtFor(name) : name,
        earthVolume.print(volume, units),
        load === undefined ? NONE : haulMass.print(load.mass.value, units),
        load === undefined ? NONE : plainNumber(load.loads.value, 0),
      ],
    };
  });
  const all = put.reduce((sum, { volume }) => sum + volume, 0);
  const sum: TableRow = {
    kind: "sum",
    cells: [own.putInAll, earthVolume.print(all, units), "", ""],
  };
  return {
    title: own.putIn,
    columns: [
      { head: own.what },
      { head: own.inPlace, figures: true },
      { head: own.weight, figures: true },
      { head: own.loads, figures: true },
    ],
    rows: rows.length === 0 ? [] : [...rows, sum],
  };
}

function earthTable({ site, schemeId, estimate }: SheetJob): Table {
  const { units } = site;
  const { earth, cost } = estimate;
  const works = site.schemes.find(({ id }) => id === schemeId)?.works ?? [];
  const stays = works.some(({ kind }) => kind === "pile");
  const row = (name: string, volume: number, weight = NONE, loads = NONE): TableRow => ({
    cells: [name, earthVolume.print(volume, units), weight, loads],
  });
  return {
    title: own.away,
    columns: [
      { head: own.what },
      { head: own.volume, figures: true },
      { head: own.weight, figures: true },
      { head: own.loads, figures: true },
    ],
    rows: [
      row(own.backBank, earth.reusedBank),
      row(own.leftBank, earth.surplusBank),
      row(
        stays ? own.leftStays : own.leftLoose,
        earth.surplusLoose,
        haulMass.print(earth.surplusMass, units),
        plainNumber(cost.loads.surplus.value, 0),
      ),
    ],
  };
}

function landTable({ site, estimate: { land } }: SheetJob): Table {
  return {
    title: own.land,
    columns: [{ head: own.what }, { head: own.amount, figures: true }],
    rows:
      land.disturbed.value > 0
        ? [
            { cells: [own.bare, area.print(land.disturbed.value, site.units)] },
            { cells: [own.barrier, distance.print(land.barrier.value, site.units)] },
          ]
        : [],
  };
}

function pipesTable({ site, estimate }: SheetJob): Table {
  const { units } = site;
  return {
    title: says.pipes,
    columns: [
      { head: says.pipe },
      { head: own.size, figures: true },
      { head: says.lengthInPlan, figures: true },
      { head: own.fall, figures: true },
      { head: says.startInvert, figures: true },
      { head: says.endInvert, figures: true },
    ],
    rows: estimate.flow.pipes.map((pipe): TableRow => {
      const invertAt = (i: number): string => {
        const station = pipe.stations.at(i);
        return station === undefined ? NONE : elevation.print(station.invert, units);
      };
      return {
        cells: [
          pipe.name,
          boreSize(pipe.inside, units),
          distance.print(pipe.length, units),
          pipeSlope.print(pipe.fall, units),
          invertAt(0),
          invertAt(-1),
        ],
      };
    }),
  };
}

/** Down to each work and material: what a person checks a delivery or a bill by. */
function byWorkTable({ site, estimate }: SheetJob): Table {
  return {
    title: own.byWork,
    columns: [
      { head: own.outBank },
      { head: own.volume, figures: true },
      { head: own.inPlaceOf },
      { head: own.volume, figures: true },
    ],
    rows: estimate.works.flatMap((work): TableRow[] => {
      const rows = volumesOf(work, site.units, (id) => nameOfMaterial(site, id));
      return rows.length === 0 ? [] : [{ kind: "group", cells: [work.name] }, ...rows];
    }),
  };
}

function volumesOf(
  { cut, fill }: Estimate["works"][number],
  units: SheetJob["site"]["units"],
  nameOf: (id: string) => string,
): TableRow[] {
  const cells = (name: string, volume: number): [string, string] => [
    name,
    earthVolume.print(volume, units),
  ];
  const out = Object.entries(cut).map(([id, volume]) =>
    cells(id === NATIVE ? own.outAgain(nameOf(id)) : nameOf(id), volume),
  );
  const put = Object.entries(fill).map(([id, volume]) => cells(nameOf(id), volume));
  return Array.from({ length: Math.max(out.length, put.length) }, (_row, i): TableRow => ({
    cells: [...(out[i] ?? ["", ""]), ...(put[i] ?? ["", ""])],
  }));
}
