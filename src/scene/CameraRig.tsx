import { useThree } from "@react-three/fiber";
import { useLayoutEffect, useMemo, type ReactElement } from "react";
import { makeRig, shapeCameras } from "./cameras.js";
import { OutsideRig } from "./OutsideRig.js";
import type { Selection, ViewKind } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import type { SceneView } from "./sceneView.js";
import { WalkRig } from "./WalkRig.js";

interface CameraRigProps {
  contents: SceneContents;
  /** Lowest place of the block of ground, scene frame. */
  floor: number;
  kind: ViewKind;
  reducedMotion: boolean;
  view: SceneView;
  /** What a walk begins beside. */
  selected: Selection | null;
}

/** The cameras and what moves the one in use. */
export function CameraRig(props: CameraRigProps): ReactElement {
  const { contents, floor, kind, reducedMotion, view } = props;
  const invalidate = useThree((state) => state.invalidate);
  const size = useThree((state) => state.size);
  const rig = useMemo(() => makeRig(), []);
  // Before the rigs below, which fit what is to be seen into the new shape.
  useLayoutEffect(() => {
    // eslint-disable-next-line react-hooks/immutability
    view.width = size.width;
    view.height = size.height;
    shapeCameras(rig, size.width, size.height);
    invalidate();
  }, [rig, size, view, invalidate]);
  return kind === "walk" ? (
    <WalkRig {...{ rig, view, contents, reducedMotion }} selected={props.selected} />
  ) : (
    <OutsideRig {...{ rig, view, kind, floor, reducedMotion }} frame={contents.frame} />
  );
}
