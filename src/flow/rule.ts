/** A limit that a check uses, SI, and who says so. */
export interface Rule {
  /** m, or rise per run for a fall. */
  value: number;
  source: string;
}
