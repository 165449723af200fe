/** Said where a place that was tapped or typed has no survey under it. */
export const NO_GROUND =
  "No ground there: choose a place within the survey, or add points there on the Survey leaf.";
