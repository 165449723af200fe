import { beforeEach, describe, expect, it } from "vitest";
import { readSite } from "../site/index.js";
import { examples } from "./examples.js";
import { useDesk } from "./siteStore.js";
import { listedSteps } from "./stepCosts.js";

const site = readSite(await examples[0]!.read());

/** The list of steps as the desk shows it. */
function listed(): ReturnType<typeof listedSteps> {
  const { history, schemeId } = useDesk.getState();
  if (history === null) throw new Error("expected an open site, got none");
  return listedSteps(history, schemeId);
}

describe("going to a step", () => {
  beforeEach(() => {
    if (!site.ok) throw new Error("expected the first example to open");
    useDesk.setState({ history: null });
    void useDesk.getState().startSite(site.value);
  });

  it("marks the present, and knows what each step changed in cost", () => {
    const { select, removeSelected } = useDesk.getState();
    const tank = useDesk
      .getState()
      .history?.present.schemes[0]?.works.find((work) => work.kind === "tank");
    if (tank === undefined) throw new Error("expected a tank in the first example");
    const before = useDesk.getState().figures?.cost.likely ?? NaN;
    select({ kind: "work", id: tank.id });
    removeSelected();
    const after = useDesk.getState().figures?.cost.likely ?? NaN;
    expect(listed().map((step) => step.where)).toEqual(["done", "now"]);
    expect(listed()[1]?.change).toBe(after - before);
    expect(after).toBeLessThan(before);
    useDesk.getState().stepTo(0);
    expect(listed().map((step) => step.where)).toEqual(["now", "undone"]);
    expect(useDesk.getState().figures?.cost.likely).toBe(before);
    useDesk.getState().stepTo(1);
    expect(useDesk.getState().figures?.cost.likely).toBe(after);
  });

  it("flies only to what is there", () => {
    const { flyTo } = useDesk.getState();
    const asked = useDesk.getState().frameAsked;
    flyTo({ kind: "work", id: "no such work" }, "flow");
    expect(useDesk.getState().frameAsked).toBe(asked);
    const id = useDesk.getState().history?.present.ground.probes[0]?.id ?? "";
    flyTo({ kind: "probe", id }, "survey");
    expect(useDesk.getState()).toMatchObject({
      frameAsked: asked + 1,
      leaf: "survey",
      selected: { kind: "probe", id },
    });
  });
});
