import { describe, expect, it } from "vitest";
import { fetchInTurn, latePart } from "./latePart.js";

const Body = (): string => "leaf";

describe("a part that is fetched when it is wanted", () => {
  it("is fetched once, and is there at once from then on", async () => {
    let loads = 0;
    const part = latePart<object>(() => {
      loads += 1;
      return Promise.resolve(Body);
    });
    expect(part.now().is).toBe("coming");
    await Promise.all([part.fetch(), part.fetch()]);
    await part.fetch();
    expect(part.now()).toEqual({ is: "here", Body });
    expect(loads).toBe(1);
  });

  it("says why it is missing, and is fetched again when asked", async () => {
    let isNetworkUp = false;
    const part = latePart<object>(() =>
      isNetworkUp ? Promise.resolve(Body) : Promise.reject(new Error("no answer")),
    );
    const seen: string[] = [];
    const stop = part.follow(() => seen.push(part.now().is));
    await part.fetch();
    expect(part.now()).toEqual({ is: "missing", why: "no answer" });
    isNetworkUp = true;
    await part.fetch();
    expect(part.now().is).toBe("here");
    expect(seen).toEqual(["missing", "coming", "here"]);
    stop();
  });

  it("does not keep the other parts from being fetched", async () => {
    const missing = latePart<object>(() => Promise.reject(new Error("no answer")));
    const other = latePart<object>(() => Promise.resolve(Body));
    await fetchInTurn([missing, other], () => Promise.resolve());
    expect([missing.now().is, other.now().is]).toEqual(["missing", "here"]);
  });
});
