import { describe, expect, it } from "vitest";
import { length } from "../../units/index.js";
import { atRest, entered, overtaken, settled, textIn, typedIn } from "./typing.js";
import type { Reading, Typing } from "./typing.js";

const read = (text: string): Reading<number> => length.parse(text, "us");
const asks = (text: string): Reading<number> => {
  const reading = length.parse(text, "us");
  return reading.ok && reading.value > 10 ? { ...reading, doubt: "Is it meant?" } : reading;
};
const typing = (text: string): Typing<number> => {
  let now: Typing<number> = entered(atRest, "1′ 0″");
  for (let end = 1; end <= text.length; end += 1) now = typedIn(now, text.slice(0, end), read);
  return now;
};

describe("typing in a field", () => {
  it("shows the document until it gets the focus", () => {
    expect(textIn(atRest, "1′ 0″")).toBe("1′ 0″");
    expect(textIn(atRest, "2′ 0″")).toBe("2′ 0″");
  });

  it("keeps every keystroke while the document changes under it", () => {
    let now: Typing<number> = entered(atRest, "1′ 0″");
    const documents = ["1′ 1″", "1′ 2″", "9′ 0″"];
    ["6", "6'", "6'4"].forEach((text, index) => {
      now = typedIn(now, text, read);
      expect(textIn(now, documents[index] ?? "")).toBe(text);
    });
    const end = settled(now, "9′ 0″", read);
    expect(end.take?.value).toBeCloseTo((6 + 4 / 12) * 0.3048, 12);
  });

  it("leaves the text under the cursor alone before the first keystroke as well", () => {
    const now = entered(atRest, "1′ 0″");
    expect(textIn(now, "5′ 0″")).toBe("1′ 0″");
    const left = settled<number>(now, "5′ 0″", read);
    expect(left.take).toBeUndefined();
    expect(textIn(left.next, "5′ 0″")).toBe("5′ 0″");
  });

  it("takes what was typed back when the document has moved on from it", () => {
    const end = settled(typing("1′ 0″"), "5′ 0″", read);
    expect(end.take?.value).toBeCloseTo(0.3048, 12);
  });

  it("takes nothing when the text is what stands there", () => {
    expect(settled(typing("1′ 0″"), "1′ 0″", read)).toEqual({ next: atRest });
  });

  it("keeps what cannot be read as typed, with the reason, until it can be", () => {
    const { next, take } = settled(typing("six"), "1′ 0″", read);
    expect(take).toBeUndefined();
    expect(textIn(next, "1′ 0″")).toBe("six");
    expect(next.wrong?.text).toContain("was not understood");
    expect(typedIn(next, "sixt", read).wrong).toEqual(next.wrong);
    expect(typedIn(next, "6", read).wrong).toBeNull();
  });

  it("lets go of what was refused when the value changes from elsewhere, and of nothing else", () => {
    const { next } = settled(typing("six"), "1′ 0″", read);
    expect(overtaken(next)).toEqual(atRest);
    const under = typing("1′ 3");
    expect(overtaken(under)).toBe(under);
  });

  it("asks about a doubt and keeps the value at hand", () => {
    const { next, take } = settled(typing("300"), "1′ 0″", asks);
    expect(take).toBeUndefined();
    expect(next.wrong?.typed?.value).toBeCloseTo(91.44, 9);
    expect(textIn(next, "1′ 0″")).toBe("300");
  });
});
