import { useState } from "react";
import type { ReactNode } from "react";
import { makeFiles, useHandover } from "../../store/index.js";
import { words } from "../../words/index.js";
import { downloadBlob } from "../files.js";
import { useSite } from "../useSite.js";

const says = words.viewer.making;

/** The way to the page of one file that shows this site to anyone. */
export function MakePage(): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const isBusy = useHandover((hand) => hand.making !== null);
  const without = useHandover((hand) => hand.leftOut);
  const [told, setTold] = useState("");
  if (estimate === null) return null;
  const make = async (): Promise<void> => {
    setTold("");
    const files = await makeFiles(site, schemeId, ["page"], { page: { without } });
    for (const { name, type, data } of files ?? []) {
      const file = new Blob([data], { type });
      downloadBlob(name, file);
      setTold(says.made(name, (file.size / 1e6).toFixed(1)));
    }
    if (files === null) setTold(useHandover.getState().fault ?? words.handing.files.cancelled);
  };
  return (
    <div>
      <p className="says">{says.says}</p>
      <div className="tools">
        <button
          type="button"
          className="button"
          data-make="page"
          disabled={isBusy}
          onClick={() => void make()}
        >
          {says.make}
        </button>
      </div>
      <p className="says" role="status">
        {told}
      </p>
    </div>
  );
}
