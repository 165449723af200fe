import { describe, expect, it } from "vitest";
import type { PlanPoint } from "../site/index.js";
import { leastCorners, placingHint, shapeOf } from "./placing.js";
import { actOfKey } from "./placingKeys.js";
import type { Placing } from "./props.js";
import { SceneDriver } from "./sceneDriver.fixture.js";
import type { SnapTarget } from "./snap.js";

const KINDS: readonly Placing[] = [
  { kind: "tank" },
  { kind: "bed" },
  { kind: "probe" },
  { kind: "outlet", what: "house" },
  { kind: "limit", what: "well" },
  { kind: "trench" },
  { kind: "limit", what: "watercourse" },
  { kind: "limit", what: "lot-line" },
  { kind: "pad" },
  { kind: "building" },
  { kind: "strip" },
  { kind: "limit", what: "wetland" },
];
const SQUARE: PlanPoint[] = [
  [1, 1],
  [5, 1],
  [5, 4],
  [1, 4],
];

const near = (at: readonly PlanPoint[]): number[][] =>
  at.map((place) => place.map((m) => Math.round(m * 1e6) / 1e6));

/** The one shape that was placed; throws when there was none, or more. */
function placedBy(driver: SceneDriver): number[][] {
  const [only, ...others] = driver.calls;
  if (only?.call !== "place" || others.length > 0) {
    throw new Error(`got ${JSON.stringify(driver.calls)}, expected one placing`);
  }
  return near(only.at);
}

describe("placing each kind to the end", () => {
  it.each(KINDS)("$kind $what", (placing) => {
    const least = leastCorners(placing);
    const driver = new SceneDriver().place(placing);
    SQUARE.slice(0, least).forEach((at, i) => {
      expect(driver.calls).toEqual([]);
      expect(driver.state.corners).toHaveLength(i);
      driver.click(at);
    });
    if (least > 1) driver.key("Enter");
    expect(placedBy(driver)).toEqual(near(SQUARE.slice(0, least)));
    expect(driver.isPlacing()).toBe(false);
  });

  it.each(KINDS)("leaves $kind $what cleanly by Escape, whatever is set", (placing) => {
    const least = leastCorners(placing);
    for (let set = 0; set < least + 2 && (least > 1 || set === 0); set++) {
      const driver = new SceneDriver().place(placing);
      SQUARE.slice(0, set).forEach((at) => driver.click(at));
      driver.hover([7, 7]).key("Escape");
      expect(driver.calls).toEqual([{ call: "cancel placing" }]);
      expect(driver.place(placing).state.corners).toEqual([]);
    }
  });
});

describe("Backspace, Enter and double clicks", () => {
  it("Backspace takes corners back one by one, and does nothing on none", () => {
    const driver = new SceneDriver().place({ kind: "pad" });
    SQUARE.slice(0, 2).forEach((at) => driver.click(at));
    expect(near(driver.key("Backspace").state.corners)).toEqual([[1, 1]]);
    expect(driver.key("Backspace").key("Backspace").state.corners).toEqual([]);
    expect(driver.calls).toEqual([]);
  });

  it("Enter before there are enough corners finishes nothing", () => {
    const driver = new SceneDriver()
      .place({ kind: "pad" })
      .click([1, 1])
      .click([5, 1])
      .key("Enter");
    expect(driver.calls).toEqual([]);
    expect(driver.state.corners).toHaveLength(2);
  });

  it("a double click sets its corner once and finishes, and the browser's own adds nothing", () => {
    const driver = new SceneDriver().place({ kind: "trench" }).click([0, 0]).doubleClick([4, 0]);
    expect(placedBy(driver)).toEqual([
      [0, 0],
      [4, 0],
    ]);
  });

  it("a double click too early keeps what is set", () => {
    const driver = new SceneDriver().place({ kind: "pad" }).click([0, 0]).doubleClick([4, 0]);
    expect(driver.calls).toEqual([]);
    expect(near(driver.state.corners)).toEqual([
      [0, 0],
      [4, 0],
    ]);
  });

  it("a click that meets no ground is said, and its second finishes nothing", () => {
    const driver = new SceneDriver().place({ kind: "trench" }).click([0, 0]).click([4, 0]);
    driver.click(null).click(null, { after: 100 });
    expect(driver.state.missed).toBe(true);
    expect(driver.calls).toEqual([]);
    expect(driver.click([4, 2]).state.missed).toBe(false);
  });

  it("a single place needs a click, or Enter where the mark is", () => {
    const driver = new SceneDriver().place({ kind: "probe" }).key("Enter");
    expect(driver.calls).toEqual([]);
    driver.key("ArrowRight").key("Enter");
    expect(placedBy(driver)).toEqual([[0.25, 0]]);
  });

  it("leaves Enter to a button that has the focus, until the shape can be finished", () => {
    const driver = new SceneDriver().place({ kind: "trench" }).click([0, 0]);
    driver.key("Enter", "button").click([4, 0]).key("Enter", "hint");
    expect(driver.calls).toEqual([]);
    expect(placedBy(driver.key("Enter", "button"))).toHaveLength(2);
  });
});

describe("closing", () => {
  it("a click on the first corner finishes an outline", () => {
    const driver = new SceneDriver().place({ kind: "pad" });
    SQUARE.forEach((at) => driver.click(at));
    driver.hover([1.06, 1.05]);
    expect(driver.state.holds).toEqual([{ by: "close" }]);
    expect(placedBy(driver.click([1.06, 1.05]))).toEqual(near(SQUARE));
  });

  it("a lot line that is closed ends where it begins; a trench does not close", () => {
    const lot = new SceneDriver().place({ kind: "limit", what: "lot-line" });
    [...SQUARE, [1, 1] as PlanPoint].forEach((at) => lot.click(at));
    expect(placedBy(lot)).toEqual(near([...SQUARE, [1, 1]]));
    const trench = new SceneDriver().place({ kind: "trench" });
    [...SQUARE, [1, 1] as PlanPoint].forEach((at) => trench.click(at));
    expect(trench.calls).toEqual([]);
  });

  it("an outline that crosses itself is refused with words, and keeps its corners", () => {
    const driver = new SceneDriver({ snapping: false }).place({ kind: "building" });
    const bowtie: PlanPoint[] = [
      [0, 0],
      [4, 4],
      [4, 0],
      [0, 4],
    ];
    bowtie.forEach((at) => driver.click(at));
    driver.key("Enter");
    expect(driver.calls).toEqual([]);
    expect(driver.state.fault).toContain("crosses itself");
    expect(driver.state.corners).toHaveLength(4);
    expect(driver.key("Backspace").state.fault).toBeNull();
  });
});

describe("a typed length", () => {
  it("leaves the mark on the corner that it set, so that no leg goes back to the pointer", () => {
    const driver = new SceneDriver().place({ kind: "trench" }).click([0, 0]);
    driver.hover([3, 0]).type({ length: 40, bearing: 90 }).set();
    expect(near([driver.state.pointer ?? [0, 0]])).toEqual([[40, 0]]);
  });

  it("sets the leg exactly, the way that the pointer lies, by Enter in the field or a click", () => {
    const driver = new SceneDriver().place({ kind: "trench" }).click([0, 0]).hover([0, 2]);
    driver.type({ length: 3.3333 }).key(" ");
    expect(near(driver.state.corners)).toEqual([
      [0, 0],
      [0, 3.3333],
    ]);
    expect(driver.state.fixed).toEqual({});
    driver.type({ length: 1.2345 }).click([5, 3.3333]);
    expect(near(driver.state.corners).at(-1)).toEqual([1.2345, 3.3333]);
  });

  it("goes straight on where no pointer shows the way, and asks where there is no way", () => {
    const driver = new SceneDriver().place({ kind: "trench" }).click([0, 0]).hover(null);
    driver.type({ length: 2 }).set();
    expect(driver.state.corners).toHaveLength(1);
    expect(driver.state.fault).toContain("Which way?");
    driver.type({ length: 2, bearing: 90 }).set();
    expect(near(driver.state.corners).at(-1)).toEqual([2, 0]);
    driver.hover(null).type({ length: 1.5 }).set();
    expect(near(driver.state.corners).at(-1)).toEqual([3.5, 0]);
  });

  it("a bearing alone reaches as far as the pointer, and never backwards", () => {
    const driver = new SceneDriver().place({ kind: "trench" }).click([0, 0]);
    driver.type({ bearing: 90 }).click([4, 1]);
    expect(near(driver.state.corners).at(-1)?.[1]).toBe(0);
    driver.type({ bearing: 90 }).click([-7, 0]);
    expect(driver.state.corners).toHaveLength(2);
  });

  it("begins with a digit, once there is a leg", () => {
    const ground = { step: 0.1, middle: [0, 0] as PlanPoint };
    const key = { key: "7", shift: false, on: "scene" } as const;
    const driver = new SceneDriver().place({ kind: "trench" });
    expect(actOfKey({ kind: "trench" }, driver.state, key, ground)).toBeNull();
    driver.click([0, 0]);
    expect(actOfKey({ kind: "trench" }, driver.state, key, ground)).toEqual({
      type: "type",
      text: "7",
    });
  });
});

describe("snapping while placing", () => {
  const shed: SnapTarget = { name: "Shed", shape: "outline", places: SQUARE };

  it("holds a corner of another thing, and says so", () => {
    const driver = new SceneDriver({ targets: [shed] }).place({ kind: "trench" });
    driver.hover([5.06, 3.95]);
    expect(driver.state.holds).toEqual([{ by: "corner", of: "Shed", shape: "outline" }]);
    expect(driver.click([5.06, 3.95]).state.corners).toEqual([[5, 4]]);
  });

  it("lets go while Alt is held, and for good when it is switched off", () => {
    const alt = new SceneDriver({ targets: [shed] }).place({ kind: "trench" });
    expect(alt.click([5.06, 3.951], { alt: true }).state.corners).toEqual([[5.06, 3.951]]);
    const off = new SceneDriver({ targets: [shed], snapping: false }).place({ kind: "trench" });
    expect(off.click([5.06, 3.951]).state.corners).toEqual([[5.06, 3.951]]);
    expect(off.state.holds).toEqual([]);
  });
});

describe("what is said", () => {
  it("speaks of finishing only once there is enough", () => {
    const trench: Placing = { kind: "trench" };
    const least = leastCorners(trench);
    expect(placingHint(trench, least - 1)).not.toMatch(/finish/);
    expect(placingHint(trench, least)).toMatch(/^Click .* finish with Enter/);
  });

  it("speaks of no keys to a finger", () => {
    expect(placingHint({ kind: "trench" }, 2, true)).toMatch(/^Tap .* finish with Done/);
    expect(placingHint({ kind: "tank" }, 0, true)).toMatch(/^Tap the ground/);
  });

  it("names the limit, and takes an unknown kind for a line", () => {
    expect(placingHint({ kind: "limit", what: "well" }, 0)).toContain("well");
    expect(shapeOf({ kind: "limit", what: "something else" })).toBe("path");
  });
});
