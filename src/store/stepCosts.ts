/** What each site of the history costs, as far as it has been worked out on this desk. */
import { stepsOf } from "../site/index.js";
import type { History, Site } from "../site/index.js";
import type { DeskState } from "./deskState.js";

/** Likely cost by scheme. Sites are never changed, so a figure holds for as long as its site. */
const known = new WeakMap<Site, Map<string, number>>();

/** Notes the cost that the desk shows. With a large survey it is of what is drawn. */
export function rememberCost({
  history,
  schemeId,
  figures,
  drawn,
}: Pick<DeskState, "history" | "schemeId" | "figures" | "drawn">): void {
  const site = drawn?.site ?? history?.present;
  if (site === undefined || figures === null) return;
  const scheme = drawn?.schemeId ?? schemeId;
  const costs = known.get(site) ?? new Map<string, number>();
  costs.set(scheme, figures.cost.likely);
  known.set(site, costs);
}

/** A step as the list of steps shows it. */
export interface ListedStep {
  /** The edit that led here; null for the oldest. */
  name: string | null;
  where: "undone" | "now" | "done";
  /** Change in likely cost that the step made for this scheme, site's currency; null: not known. */
  change: number | null;
}

/** The steps of a history, oldest first, each with the change in cost that it made. */
export function listedSteps(history: History, schemeId: string): ListedStep[] {
  const steps = stepsOf(history);
  const costs = steps.map(({ site }) => known.get(site)?.get(schemeId));
  return steps.map(({ name }, index) => {
    // Another site opened is a step too, but no change of one job's cost.
    const isSame = steps[index - 1]?.site.name === steps[index]?.site.name;
    const [before, after] = isSame ? [costs[index - 1], costs[index]] : [];
    return {
      name,
      where:
        index === history.past.length ? "now" : index < history.past.length ? "done" : "undone",
      change: before === undefined || after === undefined ? null : after - before,
    };
  });
}
