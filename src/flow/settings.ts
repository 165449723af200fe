/** Tolerances of the flow checks, SI. None comes from a rule: they only decide what is "the same". */
export const FLOW_SETTINGS = {
  /** m in plan: a pipe's end this near to a tank's body is taken to meet that tank. */
  meetsTankWithin: 0.5,
  /** m in plan: a pipe's end this near to a building, a bed or another pipe is taken to join it. */
  joinsWithin: 1,
  /** m in plan: a loose end this near to a tank is taken to be meant for it. */
  nearTank: 8,
  /** m: an inlet or outlet this close in height to the pipe's end is taken to fit it. */
  jointTolerance: 0.01,
  /** m of drop: a shortfall below this is finer than anyone lays pipe and is not reported. */
  dropTolerance: 0.0005,
  /** m of ground: as above, for cover. */
  coverTolerance: 0.0005,
} as const;
