import { describe, expect, it } from "vitest";
import { readSite } from "../site/index.js";
import { exampleJob } from "./job.fixture.js";
import { HANDOVER_KINDS } from "./makers.js";

describe("all that is handed over", () => {
  it("holds the site file, which opens again as it was", async () => {
    const job = exampleJob("alder-flat");
    const kind = HANDOVER_KINDS.find(({ id }) => id === "site");
    const [file] = (await (await kind?.load())?.(job)) ?? [];
    expect(file?.name).toBe("alder-flat.site.json");
    expect(readSite(String(file?.data))).toEqual({ ok: true, value: job.site });
  });

  it("names every surface file by one ending", async () => {
    const kind = HANDOVER_KINDS.find(({ id }) => id === "surfaces");
    const [file] = (await (await kind?.load())?.(exampleJob("quarry-lane"))) ?? [];
    expect(file?.name).toBe("quarry-lane-gravity-surfaces-landxml.xml");
  });
});
