import { beforeEach, describe, expect, it } from "vitest";
import { useDesk } from "./siteStore.js";

describe("drawing a section", () => {
  beforeEach(() => {
    useDesk.getState().stopSection();
  });

  const ends = (): unknown => useDesk.getState().section;

  it("takes two taps, and no more", () => {
    const { startSection, tapSection } = useDesk.getState();
    tapSection([9, 9]);
    expect(ends()).toBeNull();
    startSection();
    expect(ends()).toEqual([]);
    tapSection([1, 2]);
    tapSection([1, 2.01]);
    expect(ends()).toEqual([[1, 2]]);
    tapSection([4, 6]);
    tapSection([7, 7]);
    expect(ends()).toEqual([
      [1, 2],
      [4, 6],
    ]);
  });

  it("moves its ends but never onto each other, and goes when a work is placed", () => {
    const { startSection, moveSection, startPlacing } = useDesk.getState();
    startSection([
      [0, 0],
      [5, 0],
    ]);
    moveSection([
      [5, 0],
      [5, 0.01],
    ]);
    expect(ends()).toEqual([
      [0, 0],
      [5, 0],
    ]);
    moveSection([
      [0, 1],
      [5, 1],
    ]);
    expect(ends()).toEqual([
      [0, 1],
      [5, 1],
    ]);
    startPlacing("tank");
    expect(ends()).toBeNull();
  });
});
