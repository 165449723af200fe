import type { ReactNode } from "react";
import type { SceneShooter } from "../../scene/index.js";
import { useDesk, useHandover } from "../../store/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";
import { savePng, saveStages, saveTurning, usePictures, type Subject } from "./pictureDesk.js";
import { saveFiles } from "./saveFiles.js";
import { useShooter } from "./shooter.js";

const says = words.pictures.page;

/** How far an animation is, and the way out. */
function Filming(): ReactNode {
  const share = usePictures((pictures) => pictures.share);
  const stop = usePictures((pictures) => pictures.stop);
  if (share === null || stop === null) return null;
  return (
    <div className="making" role="status">
      <span>{says.filming}</span>
      <progress max={1} value={share} aria-label={says.filming} />
      <button type="button" className="button" onClick={stop}>
        {words.handing.files.cancel}
      </button>
    </div>
  );
}

/** Pictures of the scene as it is seen now; needs a scene that is drawn. */
export function PicturesSection(): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const shooter = useShooter((held) => held.shooter);
  const isFilming = usePictures((pictures) => pictures.share !== null);
  const isMaking = useHandover((hand) => hand.making !== null);
  if (estimate === null) return null;
  const take = (save: (shooter: SceneShooter, subject: Subject) => Promise<void>): void => {
    if (shooter === null) return;
    const madeAt = `${new Date().toISOString().slice(0, 19)}Z`;
    save(shooter, { site, schemeId, estimate, madeAt }).catch((fault: unknown) => {
      const why = fault instanceof Error ? fault.message : String(fault);
      useDesk.getState().tell(says.failed(why));
    });
  };
  const draw = (): void => {
    const camera = shooter?.look() ?? null;
    if (shooter === null || camera === null) return;
    const { width, height } = shooter.size();
    const views = { stages: [shooter.stage()], camera, aspect: width / height };
    void saveFiles(site, schemeId, ["view"], { views });
  };
  const isBusy = isFilming || isMaking;
  return (
    <>
      <h2>{says.title}</h2>
      {shooter === null ? (
        <p className="says">{says.noScene}</p>
      ) : (
        <>
          <p className="says">{says.says}</p>
          <div className="tools">
            <button
              type="button"
              className="button"
              disabled={isBusy}
              onClick={() => take(savePng)}
            >
              {says.png}
            </button>
            <button type="button" className="button" disabled={isBusy} onClick={draw}>
              {says.svg}
            </button>
            <button
              type="button"
              className="button"
              disabled={isBusy}
              onClick={() => take(saveTurning)}
            >
              {says.turning}
            </button>
            <button
              type="button"
              className="button"
              disabled={isBusy}
              onClick={() => take(saveStages)}
            >
              {says.stages}
            </button>
          </div>
          <Filming />
        </>
      )}
    </>
  );
}
