/** Texts of ends that meet, levels that are taken from them, and ground under what is placed. */
export const joined = {
  title: "Joints at buildings and tanks",
  at: (pipe: string, place: string, how: string): string => `${pipe} at ${place}: ${how}`,
  /** What holds an end of a pipe's path. */
  hold: {
    tankEnd: (tank: string): string => `middle of the end of ${tank}`,
    outlet: (outlet: string, building: string): string => `${outlet} of ${building}`,
    trenchEnd: (trench: string): string => `end of ${trench}`,
  },
  /** How deep a tank lies where it is; amounts printed. */
  cover: (amount: string, out: boolean): string =>
    out
      ? `Its top stands ${amount} out of the ground here.`
      : `${amount} of ground over its top here.`,
  coverShort: (amount: string, out: boolean): string =>
    out ? `top ${amount} out of the ground` : `${amount} of ground over its top`,
  groundMoved: (amount: string, lower: boolean): string =>
    `Ground here ${amount} ${lower ? "lower" : "higher"} than where it stood; its level stayed.`,
  keepDepth: "Keep its depth",
  keepDepthEdit: (tank: string): string => `keep the depth of ${tank}`,
  fieldPipe:
    "A field's pipe spreads the water: laid level to 4 in per 100 ft (common practice, no source); no least fall and no speed are asked of it.",
};
