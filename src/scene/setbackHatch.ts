/** The hatch on ground that lies inside setbacks: a field of depths as a texture of the ground. */
import {
  DataTexture,
  LinearFilter,
  RGFormat,
  UnsignedByteType,
  type Color,
  type Vector4,
} from "three";
import type { SetbackField } from "../estimate/index.js";
import type { ScenePoint } from "./frame.js";

/** Steps of the field that a byte reaches either way: near the bands' edges nothing else is asked. */
const REACH = 3;

/** Uniforms of the hatch, shared with the other looks of the earth. */
export interface HatchUniforms {
  /** In r how deep inside a setback of any part, in g of every part; 0.5 at the edge. */
  bandMap: { value: DataTexture | null };
  /** West, south, 1 ÷ width and 1 ÷ height of the map, scene frame, m; zeros for no hatch. */
  bandBox: { value: Vector4 };
  bandInk: { value: Color };
}

/** The field as bytes, r and g for each place: 128 at an edge, more inside. */
export function fieldBytes({ some, every, step }: SetbackField): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(2 * some.length);
  const byte = (deep: number): number =>
    Math.min(255, Math.max(0, Math.round(128 + (127 * deep) / (REACH * step))));
  for (let i = 0; i < some.length; i++) {
    bytes[2 * i] = byte(some[i]!);
    bytes[2 * i + 1] = byte(every[i]!);
  }
  return bytes;
}

/** The field as a texture; the caller disposes it. */
export function fieldTexture(field: SetbackField): DataTexture {
  const { columns, rows } = field;
  const texture = new DataTexture(fieldBytes(field), columns, rows, RGFormat, UnsignedByteType);
  [texture.magFilter, texture.minFilter] = [LinearFilter, LinearFilter];
  texture.unpackAlignment = 1;
  texture.needsUpdate = true;
  return texture;
}

/** Shows a field's hatch, or with null none. */
export function showHatch(
  { bandMap, bandBox, bandInk }: HatchUniforms,
  shown: { field: SetbackField; texture: DataTexture; ink: string; origin: ScenePoint } | null,
): void {
  bandMap.value = shown?.texture ?? null;
  if (shown === null) {
    bandBox.value.set(0, 0, 0, 0);
    return;
  }
  const { field, ink, origin } = shown;
  const { west, south, step, columns, rows } = field;
  bandInk.value.set(ink);
  // A place lies in the middle of its texel.
  bandBox.value.set(
    west - origin[0] - step / 2,
    south - origin[1] - step / 2,
    1 / (columns * step),
    1 / (rows * step),
  );
}

export const HATCH_HEAD = /* glsl */ `
uniform sampler2D bandMap;
uniform vec4 bandBox;
uniform vec3 bandInk;

// Share of ink at a place of the ground: lines one way inside setbacks of some parts, both ways
// inside those of all.
float bandHatch() {
  vec2 uv = (vEarthAt.xy - bandBox.xy) * bandBox.zw;
  vec2 deep = texture2D(bandMap, uv).rg - 0.502;
  vec2 soft = max(fwidth(deep), vec2(1e-4));
  vec2 isIn = smoothstep(-soft, soft, deep);
  vec2 q = vEarthAt.xy / pitch;
  float one = ruled((q.x + q.y) * 0.4, 0.09);
  float other = ruled((q.x - q.y) * 0.4, 0.09);
  float onMap = step(0.0, uv.x) * step(uv.x, 1.0) * step(0.0, uv.y) * step(uv.y, 1.0);
  float level = smoothstep(0.35, 0.6, normalize(vEarthNormal).z);
  float ink = max(isIn.x * (0.1 + 0.5 * one), isIn.y * (0.1 + 0.5 * max(one, other)));
  return bandBox.z > 0.0 ? ink * onMap * level : 0.0;
}
`;

/** After light: at night it has to read as well as by day. */
export const HATCH_BODY = /* glsl */ `
if (bandBox.z > 0.0) outgoingLight = mix(outgoingLight, bandInk, bandHatch());
`;
