import { useState } from "react";
import type { ReactNode } from "react";
import { makePage } from "../../handover/index.js";
import { words } from "../../words/index.js";
import { downloadBlob } from "../files.js";
import { useSite } from "../useSite.js";
import { pageTemplate } from "./pageTemplate.js";

const says = words.viewer.making;

/** The way to the page of one file that shows this site to anyone. */
export function MakePage(): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const [told, setTold] = useState("");
  if (estimate === null) return null;
  const make = async (): Promise<void> => {
    setTold("");
    try {
      const job = { site, schemeId, estimate, madeAt: new Date().toISOString() };
      for (const { name, type, data } of await makePage(job, { pageTemplate })) {
        const file = new Blob([data], { type });
        downloadBlob(name, file);
        setTold(says.made(name, (file.size / 1e6).toFixed(1)));
      }
    } catch (fault) {
      setTold(fault instanceof Error ? fault.message : String(fault));
    }
  };
  return (
    <div>
      <p className="says">{says.says}</p>
      <div className="tools">
        <button type="button" className="button" data-make="page" onClick={() => void make()}>
          {says.make}
        </button>
      </div>
      <p className="says" role="status">
        {told}
      </p>
    </div>
  );
}
