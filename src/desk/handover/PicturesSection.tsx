import type { ReactNode } from "react";
import type { Stage } from "../../estimate/index.js";
import type { PictureChoices } from "../../handover/index.js";
import type { SceneShooter } from "../../scene/index.js";
import { useDesk, useHandover } from "../../store/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";
import { savePng, saveStages, saveTurning, usePictures, type Subject } from "./pictureDesk.js";
import { saveFiles } from "./saveFiles.js";
import { useShooter } from "./shooter.js";

const says = words.pictures.page;

interface Takes {
  png: () => void;
  svg: () => void;
  turning: () => void;
  stages: () => void;
}

function TakeButtons({ takes, isBusy }: { takes: Takes; isBusy: boolean }): ReactNode {
  const kinds = ["png", "svg", "turning", "stages"] as const;
  return (
    <div className="tools">
      {kinds.map((kind) => (
        <button key={kind} type="button" className="button" disabled={isBusy} onClick={takes[kind]}>
          {says[kind]}
        </button>
      ))}
    </div>
  );
}

/** What takes pictures of the scene as it is seen. */
function takesOf(shooter: SceneShooter, subject: Omit<Subject, "madeAt">): Takes {
  const { site, schemeId } = subject;
  const take = (save: (shooter: SceneShooter, subject: Subject) => Promise<void>): void => {
    const madeAt = `${new Date().toISOString().slice(0, 19)}Z`;
    save(shooter, { ...subject, madeAt }).catch((fault: unknown) => {
      const why = fault instanceof Error ? fault.message : String(fault);
      useDesk.getState().tell(says.failed(why));
    });
  };
  const svg = (): void => {
    const camera = shooter.look();
    if (camera === null) return;
    const { width, height } = shooter.size();
    const views = { stages: [shooter.stage()], camera, aspect: width / height };
    void saveFiles(site, schemeId, ["view"], { views });
  };
  return {
    png: () => take(savePng),
    svg,
    turning: () => take(saveTurning),
    stages: () => take(saveStages),
  };
}

/** The same without a scene: drawn by the worker that makes files. */
function drawsOf({ site, schemeId }: Pick<Subject, "site" | "schemeId">): Takes {
  const stage = (): Stage => useDesk.getState().stage;
  const make = (pictures: PictureChoices): void =>
    void saveFiles(site, schemeId, ["pictures"], { pictures });
  return {
    png: () => make({ what: ["still"], stages: [stage()] }),
    svg: () => void saveFiles(site, schemeId, ["view"], { views: { stages: [stage()] } }),
    turning: () => make({ what: ["turning"], turned: stage() }),
    stages: () => make({ what: ["stages"] }),
  };
}

/** Pictures of the scene as it is seen now; where none can be drawn, of the ground all the same. */
export function PicturesSection(): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const shooter = useShooter((held) => held.shooter);
  const isFilming = usePictures((pictures) => pictures.share !== null);
  const isMaking = useHandover((hand) => hand.making !== null);
  if (estimate === null) return null;
  const takes =
    shooter === null ? drawsOf({ site, schemeId }) : takesOf(shooter, { site, schemeId, estimate });
  return (
    <>
      <h2>{says.title}</h2>
      <p className="says">{shooter === null ? says.noScene : says.says}</p>
      <TakeButtons takes={takes} isBusy={isFilming || isMaking} />
    </>
  );
}
