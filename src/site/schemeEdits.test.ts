import { describe, expect, it } from "vitest";
import { checkSite } from "./read.js";
import { removeLayer } from "./edits.js";
import {
  copyScheme,
  freshSchemeId,
  leaveDiggerOpen,
  removeScheme,
  renameScheme,
  setCosts,
  setMachines,
} from "./schemeEdits.js";
import { plainSite } from "./site.fixture.js";

describe("schemes", () => {
  it("are copied after the one copied, renamed and removed, but never the last", () => {
    const site = plainSite({});
    const first = site.schemes[0]!;
    const id = freshSchemeId(site);
    const two = copyScheme(site, first.id, { id, name: "Another way" });
    expect(two.schemes.map((scheme) => scheme.name)).toEqual([first.name, "Another way"]);
    expect(two.schemes[1]!.works).toBe(first.works);
    expect(checkSite(two)).toMatchObject({ ok: true });
    expect(freshSchemeId(two)).not.toBe(id);
    expect(renameScheme(two, id, "A third").schemes[1]!.name).toBe("A third");
    expect(removeScheme(two, first.id).schemes.map((scheme) => scheme.id)).toEqual([id]);
    expect(removeScheme(site, first.id)).toBe(site);
    expect(copyScheme(site, "nothing", { id, name: "x" })).toBe(site);
  });

  it("keep what was taken on when they are copied", () => {
    const first = plainSite({}).schemes[0]!;
    const one = { code: "tank.deep", where: "tank", reason: "asked the maker", scheme: first.id };
    const other = { ...one, scheme: "elsewhere" };
    const site = { ...plainSite({}), accepted: [one, other] };
    const two = copyScheme(site, first.id, { id: "b", name: "Another way" });
    expect(two.accepted).toEqual([one, other, { ...one, scheme: "b" }]);
  });

  it("take costs of their own, and lose a field that is given up", () => {
    const site = plainSite({});
    const { id } = site.schemes[0]!;
    const taxed = setCosts(setCosts(site, id, { tax: 0.1, waste: 0.05 }), id, { tax: undefined });
    expect(taxed.schemes[0]!.costs).toEqual({ waste: 0.05 });
  });
});

describe("a probe that stopped", () => {
  it("must name a layer above the last, and forgets it with the layer", () => {
    const site = plainSite({});
    const top = { id: "top", name: "Topsoil", material: "topsoil" };
    const last = { id: "deep", name: "Clay", material: "clay" };
    const stopping = (stoppedIn: string) => {
      const probes = [{ id: "p", x: 0, y: 0, thickness: [1], stoppedIn }];
      return { ...site, ground: { layers: [top, last], probes } };
    };
    expect(checkSite(stopping(top.id))).toMatchObject({ ok: true });
    for (const wrong of [last.id, "nothing"]) {
      expect(checkSite(stopping(wrong))).toMatchObject({
        ok: false,
        problems: [{ code: "unknown-layer", path: "ground.probes[0].stoppedIn" }],
      });
    }
    expect(removeLayer(stopping(top.id), top.id).ground.probes[0]!.stoppedIn).toBeUndefined();
  });
});

describe("the digger", () => {
  it("goes back to the estimate's choice, and the rest of the machines stays", () => {
    const site = plainSite({});
    const { id } = site.schemes[0]!;
    const chosen = setMachines(site, id, { digger: "digger-8t", hoursPerDay: 6 });
    expect(chosen.schemes[0]?.machines?.digger).toBe("digger-8t");
    const open = leaveDiggerOpen(chosen, id).schemes[0]?.machines;
    expect(open).toEqual({ ...site.schemes[0]?.machines, hoursPerDay: 6 });
    expect(open).not.toHaveProperty("digger");
  });
});
