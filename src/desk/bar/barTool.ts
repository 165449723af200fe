/** One button of the bar over the scene; in a narrow scene an entry of its menu. */
export interface BarTool {
  id: string;
  name: string;
  /** One line on what it does, shown on hovering. */
  title: string;
  /** Whether it is at work; null for what only does something once. */
  on: boolean | null;
  press: () => void;
}
