/** What lies around the scene: findings, search, steps, keys, tour, terms, empty pages. */
export const book = {
  steps: {
    title: "Steps",
    oldest: "as it was at first",
    went: "Went to",
  },
};
