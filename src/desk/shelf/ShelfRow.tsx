import { useEffect, useRef, useState } from "react";
import type { ReactNode, RefObject } from "react";
import { Button, Menu, MenuItem, MenuTrigger, Popover } from "react-aria-components";
import { copyOnShelf, openFromShelf, removeFromShelf, renameOnShelf } from "../../store/index.js";
import type { ShelfSite } from "../../store/index.js";
import { earthVolume, money, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { agoInWords } from "./relative.js";

/** The small picture, or an empty page where there is none yet. */
function SmallPicture({ picture }: { picture: Blob | null }): ReactNode {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    if (picture === null) return undefined;
    const made = URL.createObjectURL(picture);
    // An address is a thing of the browser's that must be given back: it cannot be made in passing.
    // eslint-disable-next-line react-hooks/set-state-in-effect
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [picture]);
  return (
    <span className="shelf-picture" aria-hidden="true">
      {picture !== null && address !== null && <img src={address} alt="" />}
    </span>
  );
}

/** Cost and cut as last worked out. */
function Figures({ figures }: Pick<ShelfSite, "figures">): ReactNode {
  if (figures === null) return words.shelf.noFigures;
  const { cut, cost, currency, units, points } = figures;
  return (
    <>
      {words.shelf.figures(
        money(currency).print(cost, units),
        earthVolume.print(cut, units, { digits: 0 }),
      )}
      <span className="shelf-points"> · {words.shelf.points(plainNumber(points, 0))}</span>
    </>
  );
}

/**
 * Gives the focus to what has just been asked for. The menu that it was asked in gives the focus back
 * to its button as it closes, so this waits for two frames.
 */
function useFocusSoon<T extends HTMLElement>(): RefObject<T | null> {
  const wanted = useRef<T>(null);
  useEffect(() => {
    let frame = requestAnimationFrame(() => {
      frame = requestAnimationFrame(() => wanted.current?.focus());
    });
    return () => cancelAnimationFrame(frame);
  }, []);
  return wanted;
}

interface RowProps {
  site: ShelfSite;
  isOnDesk: boolean;
  /** ms since 1970. */
  now: number;
  onSave: (site: ShelfSite) => void;
}

function RenameForm({ site, onDone }: { site: ShelfSite; onDone: () => void }): ReactNode {
  const [name, setName] = useState(site.name);
  const [isWrong, setWrong] = useState(false);
  const field = useFocusSoon<HTMLInputElement>();
  return (
    <form
      className="shelf-ask"
      onSubmit={(event) => {
        event.preventDefault();
        if (name.trim() === "") {
          setWrong(true);
          return;
        }
        onDone();
        if (name.trim() !== site.name) void renameOnShelf(site, name.trim());
      }}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        onDone();
      }}
    >
      <label>
        {words.shelf.newName}
        <input
          className="shelf-input"
          value={name}
          maxLength={200}
          ref={field}
          aria-invalid={isWrong}
          onFocus={(event) => event.currentTarget.select()}
          onChange={(event) => setName(event.currentTarget.value)}
        />
      </label>
      {isWrong && <p role="alert">{words.shelf.nameWanted}</p>}
      <div className="tools">
        <button type="submit" className="button main">
          {words.shelf.keepName}
        </button>
        <button type="button" className="button" onClick={onDone}>
          {words.shelf.cancel}
        </button>
      </div>
    </form>
  );
}

function DeleteAsk({ site, onDone }: { site: ShelfSite; onDone: () => void }): ReactNode {
  const no = useFocusSoon<HTMLButtonElement>();
  return (
    <div className="shelf-ask" role="group" aria-label={words.shelf.deleteAsk(site.name)}>
      <p>{words.shelf.deleteAsk(site.name)}</p>
      <div className="tools">
        <button
          type="button"
          className="button main"
          onClick={() => {
            onDone();
            void removeFromShelf(site);
          }}
        >
          {words.shelf.deleteYes}
        </button>
        <button type="button" className="button" ref={no} onClick={onDone}>
          {words.shelf.deleteNo}
        </button>
      </div>
    </div>
  );
}

function RowMenu(props: {
  site: ShelfSite;
  onSave: (site: ShelfSite) => void;
  onAsk: (ask: "rename" | "delete") => void;
}): ReactNode {
  const { site, onSave, onAsk } = props;
  return (
    <MenuTrigger>
      <Button className="round" aria-label={words.shelf.more(site.name)}>
        ⋯
      </Button>
      <Popover className="menu-popover shelf-menu" placement="bottom end">
        <Menu className="menu" aria-label={words.shelf.more(site.name)}>
          {!site.isElsewhere && (
            <MenuItem id="rename" onAction={() => onAsk("rename")}>
              {words.shelf.rename}
            </MenuItem>
          )}
          <MenuItem id="copy" onAction={() => void copyOnShelf(site)}>
            {words.shelf.copy}
          </MenuItem>
          <MenuItem id="save" onAction={() => onSave(site)}>
            {words.shelf.saveFile}
          </MenuItem>
          {!site.isElsewhere && (
            <MenuItem id="delete" onAction={() => onAsk("delete")}>
              {words.shelf.delete}
            </MenuItem>
          )}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

/** One site of the list: a tap opens it; the rest is in its menu. */
export function ShelfRow({ site, isOnDesk, now, onSave }: RowProps): ReactNode {
  const [ask, setAsk] = useState<"rename" | "delete" | null>(null);
  return (
    <li className="shelf-row" data-site={site.name} data-on-desk={isOnDesk}>
      <div className="shelf-line">
        <button
          type="button"
          className="shelf-open"
          aria-current={isOnDesk ? "true" : undefined}
          onClick={() => void openFromShelf(site.id)}
        >
          <SmallPicture picture={site.picture} />
          <span className="shelf-told">
            <span className="shelf-name">{site.name}</span>
            <span>
              <Figures figures={site.figures} />
            </span>
            <span className="soft">
              {words.shelf.changedWhen(agoInWords(site.changed, now))}
              {isOnDesk && <span className="shelf-tag">{words.shelf.openHere}</span>}
              {site.isElsewhere && <span className="shelf-tag">{words.shelf.openElsewhere}</span>}
            </span>
          </span>
        </button>
        <RowMenu site={site} onSave={onSave} onAsk={setAsk} />
      </div>
      {ask === "rename" && <RenameForm site={site} onDone={() => setAsk(null)} />}
      {ask === "delete" && <DeleteAsk site={site} onDone={() => setAsk(null)} />}
    </li>
  );
}
