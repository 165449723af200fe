/** Said where a place that was tapped or typed has no survey under it. */
export const NO_GROUND =
  "No ground there: choose a place within the survey, or add points there on the Survey leaf.";

/** The same where nothing can be added: on the page that is only looked at. */
export const NO_GROUND_TO_ADD =
  "No ground there: the survey ends at the edge of what is drawn. Choose a place within it.";
