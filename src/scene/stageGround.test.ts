import { describe, expect, it } from "vitest";
import { FACE, type GroundMesh } from "../estimate/index.js";
import { stageGround } from "./stageGround.js";

/** A slope z = 2 + x / 10 on 10 m square of two triangles, with one upright block face. */
function slope(): GroundMesh {
  const z = (x: number) => 2 + x / 10;
  const [a, b, c, d] = [
    [0, 0, z(0)],
    [10, 0, z(10)],
    [10, 10, z(10)],
    [0, 10, z(0)],
  ] as const;
  const side = [
    [0, 0, 0],
    [10, 0, 0],
    [10, 0, z(10)],
  ] as const;
  const corners = [a, b, c, a, c, d, ...side];
  return {
    origin: [1000, 2000, 700],
    positions: Float32Array.from(corners.flat()),
    normals: new Float32Array(corners.length * 3),
    materials: ["soil"],
    materialOf: new Uint8Array(corners.length),
    faceOf: Uint8Array.from([0, 0, 0, 1, 1, 1, 3, 3, 3]),
    edges: new Float32Array(),
  };
}

describe("stageGround", () => {
  const ground = stageGround(slope(), [900, 2000, 700]);

  it("tells the height and the kind of face in the scene's frame", () => {
    expect(ground.heightAt(108, 2)?.z).toBeCloseTo(2.8, 5);
    expect(ground.heightAt(108, 2)?.face).toBe(FACE.found);
    expect(ground.heightAt(102, 8)?.face).toBe(FACE.dug);
    expect(ground.heightAt(98, 5)).toBeNull();
  });

  it("is struck by a ray where a hand calculation says", () => {
    // Down at 45° to the east from 10 m: 10 − t = 2 + (x₀ + t − 100) / 10 with x₀ = 100.
    const t = 8 / 1.1;
    const hit = ground.strike({ from: [100, 5, 10], along: [1, 0, -1] });
    expect(hit?.[0]).toBeCloseTo(100 + t, 4);
    expect(hit?.[2]).toBeCloseTo(10 - t, 4);
    expect(ground.strike({ from: [100, 5, 10], along: [0, 0, 1] })).toBeNull();
  });

  it("boxes what is no longer as found", () => {
    expect(ground.worked?.map(Math.round)).toEqual([100, 0, 110, 10]);
  });
});
