import { Color, DoubleSide, FrontSide, MeshLambertMaterial, Vector2, Vector4 } from "three";
import { bandTones, LEVEL, type DepthBands } from "./depthBands.js";
import { HATCH_BODY, HATCH_HEAD, type HatchUniforms } from "./setbackHatch.js";

/** Uniforms that the scene changes without making a new material. */
export interface EarthUniforms extends HatchUniforms {
  /** m between the marks of a pattern; follows the distance of the eye in whole doublings. */
  pitch: { value: number };
  grassHigh: { value: Color };
  /** m of a band of cut and of fill; zeros for earth in its own colours. */
  depthStep: { value: Vector2 };
  /** Tones of the bands from the shallowest, as many as the shader has room for. */
  cutTones: { value: Color[] };
  fillTones: { value: Color[] };
  /** Drawing px between the lines of a hatch. */
  hatch: { value: number };
}

/** Tones that the shader has room for on each side. */
const TONES = 5;

/** Uniforms of earth in its own colours. */
export function earthUniforms(grassHigh: string): EarthUniforms {
  const tones = (): Color[] => Array.from({ length: TONES }, () => new Color());
  return {
    pitch: { value: 0.4 },
    grassHigh: { value: new Color(grassHigh) },
    depthStep: { value: new Vector2() },
    cutTones: { value: tones() },
    fillTones: { value: tones() },
    hatch: { value: 7 },
    bandMap: { value: null },
    bandBox: { value: new Vector4() },
    bandInk: { value: new Color() },
  };
}

/** Shows these bands of depth, or with null the earth in its own colours. */
export function showBands(uniforms: EarthUniforms, bands: DepthBands | null): void {
  uniforms.depthStep.value.set(bands?.cut.step ?? 0, bands?.fill.step ?? 0);
  if (bands === null) return;
  for (const [side, to] of [
    ["cut", uniforms.cutTones],
    ["fill", uniforms.fillTones],
  ] as const) {
    const tones = bandTones(side, bands[side].count);
    to.value.forEach((colour, i) => colour.set(tones[i] ?? tones.at(-1) ?? "#ffffff"));
  }
}

const HEAD_VERTEX = /* glsl */ `
attribute float pattern;
attribute float depth;
varying float vPattern;
varying float vDepth;
varying vec3 vEarthAt;
varying vec3 vEarthNormal;
`;

const BODY_VERTEX = /* glsl */ `
vPattern = pattern;
vDepth = depth;
vEarthAt = (modelMatrix * vec4(transformed, 1.0)).xyz;
vEarthNormal = normalize(mat3(modelMatrix) * objectNormal);
`;

const HEAD_FRAGMENT = /* glsl */ `
uniform float pitch;
uniform vec3 grassHigh;
uniform vec2 depthStep;
uniform vec3 cutTones[${TONES}];
uniform vec3 fillTones[${TONES}];
uniform float hatch;
varying float vPattern;
varying float vDepth;
varying vec3 vEarthAt;
varying vec3 vEarthNormal;

float chance(vec2 p) {
  return fract(sin(dot(p, vec2(127.1, 311.7))) * 43758.5453);
}
float mottle(vec2 p) {
  vec2 i = floor(p), f = fract(p);
  f = f * f * (3.0 - 2.0 * f);
  return mix(mix(chance(i), chance(i + vec2(1, 0)), f.x),
             mix(chance(i + vec2(0, 1)), chance(i + vec2(1, 1)), f.x), f.y);
}
// Share of ink of lines at whole t, duty wide; fades to its mean where lines are finer than pixels.
float ruled(float t, float duty) {
  float w = fwidth(t);
  float off = abs(fract(t) - 0.5) * 2.0;
  float ink = smoothstep(1.0 - duty - w * 2.0, 1.0 - duty + w * 2.0, off);
  return mix(ink, duty, smoothstep(0.35, 0.9, w));
}
// Share of ink of one dot in each unit cell, moved about by chance; some is the share of cells kept.
float dotted(vec2 p, float radius, float some) {
  vec2 cell = floor(p);
  vec2 shift = vec2(chance(cell), chance(cell + 17.0)) - 0.5;
  float kept = step(chance(cell + 41.0), some);
  float size = radius * (0.65 + 0.7 * chance(cell + 71.0));
  vec2 fw = fwidth(p);
  float w = max(fw.x, fw.y);
  float ink = kept * (1.0 - smoothstep(size - w, size + w, length(fract(p) - 0.5 - shift * 0.5)));
  return mix(ink, some * radius * radius * 3.14, smoothstep(0.3, 0.8, w));
}
// Short level dashes, every other row moved by half.
float dashed(vec2 p, float share) {
  float row = floor(p.y);
  float t = fract(p.x * 0.5 + 0.5 * mod(row, 2.0) + 0.3 * chance(vec2(row, 3.0)));
  float w = fwidth(p.x * 0.5);
  float on = 1.0 - smoothstep(share - w, share + w, t);
  return on * ruled(p.y, 0.16);
}
vec3 earthColour(vec3 base) {
  int kind = int(vPattern + 0.5);
  vec3 n = normalize(vEarthNormal);
  vec2 p = vEarthAt.xy;
  if (abs(n.z) < 0.985 && kind > 0) {
    // On a wall: along it, and up it.
    vec2 level = normalize(vec2(-n.y, n.x) + vec2(1e-6, 0.0));
    vec3 up = normalize(cross(n, vec3(level, 0.0)));
    p = vec2(dot(vEarthAt.xy, level), dot(vEarthAt, up) * sign(up.z + 1e-6));
  }
  vec2 q = p / pitch;
  if (kind == 0) {
    float broad = mottle(p * 0.07) * 0.6 + mottle(p * 0.21 + 9.0) * 0.4;
    float fine = mottle(p * 2.3) - 0.5;
    return mix(base, grassHigh, smoothstep(0.25, 0.75, broad)) * (1.0 + 0.05 * fine);
  }
  float blot = 0.94 + 0.12 * mottle(q * 0.35);
  if (kind == 1) return base * mix(blot, 1.65, dashed(q * vec2(1.0, 1.3), 0.3) * 0.55);
  if (kind == 2) return base * mix(blot, 0.5, dotted(q * 1.25, 0.17, 0.85));
  if (kind == 3) return base * mix(blot, 0.52, ruled((q.x + q.y) * 0.5, 0.2));
  if (kind == 4) return base * mix(blot, 0.4, ruled((q.x - q.y) * 0.95, 0.3));
  if (kind == 5) return base * mix(1.0, 0.55, dotted(q * 0.85, 0.34, 1.0) - dotted(q * 0.85, 0.24, 1.0) * 0.7);
  if (kind == 6) return base * mix(blot, 0.6, dashed(q * vec2(0.8, 0.8), 0.45));
  float crossed = max(ruled((q.x + q.y) * 0.42, 0.15), ruled((q.x - q.y) * 0.42, 0.15));
  return base * mix(blot, 0.58, crossed);
}
// The tone of a depth with its hatch, and in w whether there is one. The hatch keeps its direction
// on the screen, so that it reads as the legend's whichever way the eye looks.
vec4 depthTone() {
  bool isCut = vDepth > 0.0;
  float size = isCut ? depthStep.x : depthStep.y;
  float t = abs(vDepth) / max(size, 1e-6);
  float w = fwidth(t);
  vec2 at = gl_FragCoord.xy / hatch;
  float off = abs(fract(isCut ? at.x - at.y : at.x + at.y) - 0.5);
  if (size <= 0.0 || abs(vDepth) < ${LEVEL.toFixed(4)}) return vec4(0.0);
  int band = int(min(floor(t), ${TONES - 1}.0));
  vec3 tone = isCut ? cutTones[band] : fillTones[band];
  bool isDark = dot(tone, vec3(0.21, 0.72, 0.07)) < 0.09;
  tone = mix(isDark ? tone * 2.6 + 0.02 : tone * 0.5, tone, smoothstep(0.09, 0.2, off));
  float edge = abs(fract(t + 0.5) - 0.5);
  float line = (1.0 - smoothstep(w * 0.5, w * 1.3, edge)) * step(0.5, t) * step(1e-4, w);
  return vec4(tone * mix(1.0, 0.3, line), 1.0);
}
`;

/** How a piece of ground is drawn. */
export type EarthLook =
  /** As it is. */
  | "solid"
  /** Only what faces the eye: the near walls of a hole in the ground are left out. */
  | "inner"
  /** So that what lies under it shows; drawn over its "mask". */
  | "veil"
  /** Not seen: it keeps all but the nearest ground out of the veil. */
  | "mask";

/** Share of what lies behind it that a veil hides. */
const VEIL = 0.42;

/** In what order the parts of a ground that is seen through are drawn; ink on it comes after. */
export const VEIL_ORDER = { mask: 2, veil: 3, ink: 4 } as const;

/**
 * A matt material for earth: colour per vertex (attribute `color`, linear) and a pattern drawn in
 * world space by the attribute `pattern` (see PATTERN), so that kinds of earth can be told apart
 * without colour. Walls are patterned along and up themselves. The caller disposes it.
 */
export function makeEarthMaterial(
  uniforms: EarthUniforms,
  look: EarthLook = "solid",
): MeshLambertMaterial {
  const isVeil = look === "veil" || look === "mask";
  const material = new MeshLambertMaterial({
    vertexColors: true,
    side: look === "inner" ? FrontSide : DoubleSide,
    // The mask too: what is opaque is drawn before all that is not, and it must come after things.
    transparent: isVeil,
    opacity: isVeil ? VEIL : 1,
    depthWrite: look !== "veil",
    colorWrite: look !== "mask",
    // Ink lines lie on the faces: push the faces back a little so that the lines stay whole.
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
  });
  material.onBeforeCompile = (shader) => {
    Object.assign(shader.uniforms, uniforms);
    shader.vertexShader = shader.vertexShader
      .replace("#include <common>", `#include <common>\n${HEAD_VERTEX}`)
      .replace("#include <begin_vertex>", `#include <begin_vertex>\n${BODY_VERTEX}`);
    shader.fragmentShader = shader.fragmentShader
      .replace("#include <common>", `#include <common>\n${HEAD_FRAGMENT}${HATCH_HEAD}`)
      .replace(
        "#include <color_fragment>",
        `#include <color_fragment>
        diffuseColor.rgb = earthColour(diffuseColor.rgb);
        vec4 tone = depthTone();
        diffuseColor.rgb = mix(diffuseColor.rgb, tone.rgb, tone.w);`,
      )
      // Half lit and half as the legend has it, or a wall in the shade would read as deeper.
      .replace(
        "#include <opaque_fragment>",
        `outgoingLight = mix(outgoingLight, tone.rgb, 0.5 * tone.w);\n${HATCH_BODY}\n#include <opaque_fragment>`,
      );
  };
  material.customProgramCacheKey = () => "earth";
  return material;
}

/** m between marks that look right when one CSS px covers `metres`: whole doublings, so it jumps
 * seldom, and never finer than earth can be drawn. */
export function patternPitch(metres: number): number {
  return Math.min(4, Math.max(0.1, 2 ** Math.round(Math.log2(metres * 9))));
}
