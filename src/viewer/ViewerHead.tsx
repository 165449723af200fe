import { useState } from "react";
import type { ReactNode } from "react";
import { download, Mark } from "../drawn/index.js";
import { madeDay } from "../handover/index.js";
import { siteFileName, writeSite } from "../site/index.js";
import type { Site } from "../site/index.js";
import { words } from "../words/index.js";
import type { Theme } from "./useTheme.js";

interface Props {
  site: Site;
  schemeId: string;
  madeAt: string;
  theme: Theme;
  onScheme: (id: string) => void;
  onTheme: (theme: Theme) => void;
}

/** What is shown, of when it is, and the way to take the site file out of the page. */
export function ViewerHead(props: Props): ReactNode {
  const { site, schemeId, madeAt, theme, onScheme, onTheme } = props;
  const [saved, setSaved] = useState("");
  const said = words.viewer;
  const save = (): void => {
    const name = siteFileName(site.name);
    download(name, writeSite(site), "application/json");
    setSaved(said.saved(name));
  };
  return (
    <header className="viewer-head">
      <span className="mark">
        <Mark />
      </span>
      <div className="viewer-name">
        <h1>{site.name}</h1>
        <p className="soft">{said.made(madeDay(madeAt))}</p>
      </div>
      <label className="viewer-scheme">
        <span>{said.scheme}</span>
        <select
          value={schemeId}
          disabled={site.schemes.length < 2}
          onChange={(event) => onScheme(event.target.value)}
        >
          {site.schemes.map((scheme) => (
            <option key={scheme.id} value={scheme.id}>
              {scheme.name}
            </option>
          ))}
        </select>
      </label>
      <div className="viewer-tools">
        <button type="button" className="button main" onClick={save}>
          {said.save}
        </button>
        <button
          type="button"
          className="button"
          onClick={() => onTheme(theme === "dark" ? "light" : "dark")}
        >
          {theme === "dark" ? said.toLight : said.toDark}
        </button>
      </div>
      <p className="unseen" role="status">
        {saved}
      </p>
    </header>
  );
}
