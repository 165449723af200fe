import type { ReactNode } from "react";
import { StageSlider } from "../drawn/index.js";
import { useDesk } from "../store/index.js";
import "./shading.css";

/** The stage of the job that the scene shows. */
export function Stages(): ReactNode {
  const stage = useDesk((desk) => desk.stage);
  const show = useDesk((desk) => desk.show);
  return <StageSlider stage={stage} onStage={(chosen) => show({ stage: chosen })} />;
}
