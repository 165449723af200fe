export { SiteScene } from "./SiteScene.js";
export type { DragMove, Placing, Selection, SiteSceneProps } from "./props.js";
