export type { SceneLook, SceneShooter } from "./shooter.js";
export type { TakePicture } from "./PictureTaker.js";
export { canDraw, SiteScene } from "./SiteScene.js";
export type {
  CranePlace,
  DragMove,
  Placing,
  ProbeWorth,
  Selection,
  SiteSceneProps,
  ViewKind,
} from "./props.js";
