export { SiteScene } from "./SiteScene.js";
export type {
  CranePlace,
  DragMove,
  Placing,
  ProbeWorth,
  Selection,
  SiteSceneProps,
} from "./props.js";
