// 29 CFR 1926 Subpart P, Appendix A, paragraph (b) (US Occupational Safety and Health Administration).
import { describe, expect, it } from "vitest";
import { soilClass, type SoilAnswers } from "./soilClass.js";

const sound: SoilAnswers = {
  ground: "soil",
  grain: "cohesive",
  strength: "high",
  water: "dry",
  fissured: false,
  shaken: false,
  disturbed: false,
  dips: "no",
};

describe("the class of a soil", () => {
  it.each<[string, Partial<SoilAnswers>, string]>([
    ["A: cohesive, 1.5 tsf or more", {}, "type-a"],
    ["A (i): never if fissured", { fissured: true }, "type-b"],
    ["A (ii): never if shaken by traffic or the like", { shaken: true }, "type-b"],
    ["A (iii): never if disturbed before", { disturbed: true }, "type-b"],
    ["B (v): layers that dip in less steeply than 4:1", { dips: "gently" }, "type-b"],
    ["B (i): cohesive, over 0.5 and under 1.5 tsf", { strength: "middle" }, "type-b"],
    ["B (ii): angular gravel", { grain: "angular-gravel" }, "type-b"],
    ["B (ii): silt, silt loam, sandy loam", { grain: "silt" }, "type-b"],
    ["C (i): cohesive, 0.5 tsf or less", { strength: "low" }, "type-c"],
    ["C (ii): gravel, sand, loamy sand", { grain: "granular" }, "type-c"],
    ["C (iii): submerged soil", { water: "submerged" }, "type-c"],
    ["C (iii): water seeps freely", { water: "seeps" }, "type-c"],
    ["C (v): layers that dip in at 4:1 or steeper", { dips: "steeply" }, "type-c"],
  ])("%s", (_, change, wanted) => {
    const found = soilClass({ ...sound, ...change });
    expect(found.id).toBe(wanted);
    expect(found.because.length).toBeGreaterThan(0);
    expect(found.ask).toBeNull();
  });

  it.each<[string, SoilAnswers, string]>([
    ["stable rock", { ground: "rock", rock: "stable" }, "stable-rock"],
    [
      "B (iv): dry rock that is not stable",
      { ground: "rock", rock: "fractured", water: "dry" },
      "type-b",
    ],
    [
      "C (iv): submerged rock that is not stable",
      { ground: "rock", rock: "fractured", water: "submerged" },
      "type-c",
    ],
    ["rock from which water comes", { ground: "rock", rock: "stable", water: "seeps" }, "type-c"],
  ])("%s", (_, answers, wanted) => {
    expect(soilClass(answers).id).toBe(wanted);
  });

  it("is untyped until each question that matters is answered, and asks the next", () => {
    expect(soilClass({})).toMatchObject({ id: "untyped", ask: "ground" });
    expect(soilClass({ ground: "rock" })).toMatchObject({ id: "untyped", ask: "rock" });
    for (const question of Object.keys(sound) as (keyof SoilAnswers)[]) {
      const open = Object.fromEntries(Object.entries(sound).filter(([key]) => key !== question));
      expect(soilClass(open)).toMatchObject({ id: "untyped", ask: question });
    }
  });

  it("asks no strength of a soil without cohesion", () => {
    const entries = Object.entries({ ...sound, grain: "silt" });
    const silt = Object.fromEntries(entries.filter(([key]) => key !== "strength"));
    expect(soilClass(silt).id).toBe("type-b");
  });
});
