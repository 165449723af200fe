import { Color, Vector4 } from "three";
import { expect, it } from "vitest";
import { setbackField, setbacksAsked, type SetbackField } from "../estimate/index.js";
import { plainSite, plainTank } from "../site/site.fixture.js";
import { fieldBytes, fieldTexture, showHatch, type HatchUniforms } from "./setbackHatch.js";

const site = {
  ...plainSite({ works: [plainTank({ id: "t" })] }),
  limits: [{ id: "w", kind: "well", setback: 8, at: [10, 0] as [number, number] }],
};
const asks = setbacksAsked(site, site.schemes[0]!);
const box = { west: -20, south: -20, east: 20, north: 20 };
const field = setbackField(asks, box) as SetbackField;

it("writes 128 at the edge of a band, more inside it, less outside", () => {
  const bytes = fieldBytes(field);
  expect(bytes).toHaveLength(2 * field.columns * field.rows);
  for (let i = 0; i < field.some.length; i++) {
    expect(Math.sign(bytes[2 * i]! - 128)).toBe(
      Math.sign(Math.round((field.some[i]! / field.step) * 42)),
    );
  }
  const odd: SetbackField = { ...field, some: new Float32Array([-Infinity, 1e9]) };
  expect([...fieldBytes({ ...odd, every: odd.some })]).toEqual([0, 0, 255, 255]);
});

it("lies where the field does: a place in the middle of its texel", () => {
  const uniforms: HatchUniforms = {
    bandMap: { value: null },
    bandBox: { value: new Vector4() },
    bandInk: { value: new Color() },
  };
  const texture = fieldTexture(field);
  showHatch(uniforms, { field, texture, ink: "#000000", origin: [100, 0, 0] });
  const { x, y, z, w } = uniforms.bandBox.value;
  const { step, columns, rows } = field;
  // The place of column 10 and row 20, in the scene's frame.
  const [px, py] = [-20 + 10 * step - 100, -20 + 20 * step];
  expect((px - x) * z * columns).toBeCloseTo(10.5);
  expect((py - y) * w * rows).toBeCloseTo(20.5);
  showHatch(uniforms, null);
  expect(uniforms.bandBox.value.z).toBe(0);
  expect(uniforms.bandMap.value).toBeNull();
});
