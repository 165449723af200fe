export { SiteScene } from "./SiteScene.js";
export type { DragMove, Placing, ProbeWorth, Selection, SiteSceneProps } from "./props.js";
