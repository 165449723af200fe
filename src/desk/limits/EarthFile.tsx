import type { ReactNode } from "react";
import { addLimit, freshId, LIMIT_KINDS, type PlanPoint, type Site } from "../../site/index.js";
import {
  limitFrom,
  originFrom,
  readGeoJson,
  toPlane,
  writeGeoJson,
  type EarthPlace,
} from "../../survey/index.js";
import { useDesk } from "../../store/index.js";
import { distance } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { TypedField } from "../fields/TypedField.js";
import { askForFile, download } from "../files.js";
import { lotOutline } from "../late/lotOutline.js";
import { MOST_TABLE_BYTES, sizeFault } from "../tooLarge.js";
import { useEdit, useSite } from "../useSite.js";
import { useLimitDrafts, type EarthDraft } from "./drafts.js";

const says = words.limits.earth;

/** m: a file whose places lie farther from the survey is asked about. Common practice, no source. */
const FAR = 2000;
const MOST_PROBLEMS = 12;

function openFile(file: File): void {
  const { tell } = useDesk.getState();
  const fault = sizeFault(file.size, MOST_TABLE_BYTES);
  if (fault !== null) {
    tell(words.book.tooLarge.tell(file.name, fault.size, fault.most));
    return;
  }
  file.text().then(
    (text) => {
      const read = readGeoJson(text);
      const kinds = read.outlines.map(({ kind }) => kind ?? "");
      useLimitDrafts.setState({ earth: { file: file.name, ...read, kinds } });
    },
    (why: unknown) => tell(says.unread(file.name, String(why))),
  );
}

/** Limits brought from, and taken to, longitude and latitude. */
export function EarthFile(): ReactNode {
  const earth = useLimitDrafts((draft) => draft.earth);
  return (
    <details className="working" data-testid="earth-file">
      <summary>
        <span className="text">{says.title}</span>
      </summary>
      <div className="inside">
        <p className="says">{says.says}</p>
        <EarthPlaceFields />
        <div className="tools">
          <button
            type="button"
            className="button"
            onClick={() => askForFile(".geojson,.json,application/geo+json", openFile)}
          >
            {says.open}
          </button>
        </div>
        {earth !== null && <Opened earth={earth} />}
        <SaveEarth />
      </div>
    </details>
  );
}

/** Longitude and latitude of the site's own origin. */
function EarthPlaceFields(): ReactNode {
  const { place } = useSite().site;
  const edit = useEdit();
  const field = (key: "longitude" | "latitude", most: number): ReactNode => (
    <TypedField
      label={says[key]}
      name={key}
      shown={place === undefined ? "" : String(Number(place[key].toFixed(8)))}
      inputMode="decimal"
      read={(text) => {
        const value = Number(text.trim().replace("−", "-").replace("°", ""));
        return text.trim() !== "" && Math.abs(value) <= most
          ? { ok: true, value }
          : { ok: false, text: says.degrees(most) };
      }}
      onCommit={(value) =>
        edit(says.step2, (site) => ({
          ...site,
          place: { ...(site.place ?? { longitude: 0, latitude: 0 }), [key]: value },
        }))
      }
    />
  );
  return place === undefined ? null : (
    <>
      {field("longitude", 180)}
      {field("latitude", 90)}
    </>
  );
}

/** The site's place on the earth: its own, or from the file's first place. */
function originOf(site: Site, earth: EarthDraft, at: readonly [number, number]): EarthPlace | null {
  const first = earth.outlines[0]?.places[0];
  if (site.place !== undefined) return site.place;
  return first === undefined ? null : originFrom(first, [at[0], at[1]]);
}

function Opened({ earth }: { earth: EarthDraft }): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const at = useLimitDrafts((draft) => draft.earthAt);
  const origin = originOf(site, earth, at);
  const count = earth.kinds.filter((kind) => kind !== "").length;
  const use = (): void => {
    if (origin === null) return;
    edit(says.step, (now) => withOutlines(now, earth, origin));
    useDesk.getState().tell(says.added(count));
    useLimitDrafts.setState({ earth: null });
  };
  return (
    <>
      <p>{says.read(earth.file, earth.outlines.length)}</p>
      <ul className="row-problems">
        {earth.problems.slice(0, MOST_PROBLEMS).map(({ path, what, mend }, i) => (
          <li key={i}>{says.problem(path, what, mend)}</li>
        ))}
      </ul>
      {earth.outlines.length > 0 && (
        <>
          <p className="soft">{site.place === undefined ? says.unknown : says.known}</p>
          {site.place === undefined && <FirstPlace />}
          <Kinds earth={earth} />
          <FarOff earth={earth} origin={origin} />
          <div className="tools">
            <button type="button" className="button" disabled={count === 0} onClick={use}>
              {says.use(count)}
            </button>
          </div>
        </>
      )}
    </>
  );
}

function withOutlines(site: Site, earth: EarthDraft, origin: EarthPlace): Site {
  const placed: Site = {
    ...site,
    place: { ...site.place, longitude: origin.longitude, latitude: origin.latitude },
  };
  return earth.outlines.reduce((now, outline, i) => {
    const kind = earth.kinds[i] ?? "";
    return kind === "" ? now : addLimit(now, limitFrom(outline, kind, origin, freshId(now, kind)));
  }, placed);
}

function FirstPlace(): ReactNode {
  const [east, north] = useLimitDrafts((draft) => draft.earthAt);
  const set = useLimitDrafts.setState;
  return (
    <>
      <MeasureField
        label={says.east}
        name="earth-east"
        value={east}
        measure={distance}
        onCommit={(value) => set({ earthAt: [value, north] })}
      />
      <MeasureField
        label={says.north}
        name="earth-north"
        value={north}
        measure={distance}
        onCommit={(value) => set({ earthAt: [east, value] })}
      />
    </>
  );
}

function Kinds({ earth }: { earth: EarthDraft }): ReactNode {
  const choose = (index: number, kind: string): void =>
    useLimitDrafts.setState({
      earth: { ...earth, kinds: earth.kinds.map((one, i) => (i === index ? kind : one)) },
    });
  return (
    <ul className="earth-kinds">
      {earth.outlines.map((outline, i) => {
        const name = outline.name ?? says.unnamed(outline.path);
        return (
          <li key={outline.path}>
            <span>
              {name} <small className="soft">{says.shapes[outline.shape]}</small>
            </span>
            <select
              aria-label={says.kindOf(name)}
              value={earth.kinds[i] ?? ""}
              onChange={(event) => choose(i, event.target.value)}
            >
              <option value="">{says.leaveOut}</option>
              {LIMIT_KINDS.map((kind) => (
                <option key={kind.id} value={kind.id}>
                  {kind.name}
                </option>
              ))}
            </select>
          </li>
        );
      })}
    </ul>
  );
}

/** Asks when a file lies far from the survey. */
function FarOff({ earth, origin }: { earth: EarthDraft; origin: EarthPlace | null }): ReactNode {
  const { site } = useSite();
  if (origin === null) return null;
  const outline = lotOutline(site);
  const middle = outline.reduce<PlanPoint>(
    ([x, y], [px, py]) => [x + px / outline.length, y + py / outline.length],
    [0, 0],
  );
  const farthest = earth.outlines
    .flatMap(({ places }) => places)
    .reduce((most, place) => {
      const [x, y] = toPlane(origin, place);
      return Math.max(most, Math.hypot(x - middle[0], y - middle[1]));
    }, 0);
  return farthest > FAR ? (
    <p className="wrong-note">{says.far(distance.print(farthest, site.units))}</p>
  ) : null;
}

function SaveEarth(): ReactNode {
  const { site, schemeId } = useSite();
  const { place } = site;
  const save = (origin: EarthPlace): void => {
    const works = site.schemes.find(({ id }) => id === schemeId)?.works ?? [];
    const name = `${site.name
      .trim()
      .replace(/[^\p{L}\p{N}]+/gu, "-")
      .toLowerCase()}.geojson`;
    download(name, writeGeoJson(site.limits ?? [], works, origin), "application/geo+json");
    useDesk.getState().tell(says.saved(name));
  };
  if (place === undefined) return <StartPlace />;
  return (
    <div className="tools">
      <button type="button" className="link" onClick={() => save(place)}>
        {says.save}
      </button>
    </div>
  );
}

/** Longitude and latitude, both at once, of a site that has none. */
function StartPlace(): ReactNode {
  const edit = useEdit();
  return (
    <TypedField
      label={says.both}
      name="earth-place"
      shown=""
      note={says.noPlace}
      read={(text) => {
        const [latitude = NaN, longitude = NaN, ...more] = text
          .replace(/[°−]/g, (mark) => (mark === "−" ? "-" : ""))
          .split(/[\s,;]+/)
          .filter((part) => part !== "")
          .map(Number);
        const fits = Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180 && more.length === 0;
        return fits
          ? { ok: true, value: { longitude, latitude } }
          : { ok: false, text: says.bothAs };
      }}
      onCommit={(place) => edit(says.step2, (site) => ({ ...site, place }))}
    />
  );
}
