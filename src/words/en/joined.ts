/** Texts of ends that meet, levels that are taken from them, and ground under what is placed. */
export const joined = {
  title: "Joints at buildings and tanks",
  at: (pipe: string, place: string, how: string): string => `${pipe} at ${place}: ${how}`,
};
