import type { ReactNode, RefObject } from "react";
import { Dialog, Popover } from "react-aria-components";
import { setUnits } from "../../site/index.js";
import type { Measure, PrintOptions } from "../../units/index.js";
import { words } from "../../words/index.js";
import { useEdit, useSite } from "../useSite.js";
import { changesWithUnits, otherWays } from "./otherWays.js";

interface UnitMenuProps {
  value: number | undefined;
  measure: Measure;
  print: PrintOptions | undefined;
  anchor: RefObject<HTMLElement | null>;
  open: boolean;
  onOpen: (open: boolean) => void;
}

/** The value in other units, and the way to show the whole site in them. */
export function UnitMenu(props: UnitMenuProps): ReactNode {
  const { value, measure, print, anchor, open, onOpen } = props;
  const { units } = useSite().site;
  const edit = useEdit();
  const ways = value === undefined ? [] : otherWays(measure, value, units, print ?? {});
  const other = units === "us" ? "metric" : "us";
  const [name, text] =
    other === "us"
      ? [words.forms.siteInFeetEdit, words.forms.siteInFeet]
      : [words.forms.siteInMetresEdit, words.forms.siteInMetres];
  return (
    <Popover
      triggerRef={anchor}
      isOpen={open}
      onOpenChange={onOpen}
      className="menu-popover unit-popover"
      placement="bottom end"
    >
      <Dialog aria-label={words.forms.sameValue}>
        {ways.length > 0 && (
          <>
            <p className="soft">{words.forms.sameValue}</p>
            <ul>
              {ways.map((way) => (
                <li key={way}>{way}</li>
              ))}
            </ul>
            <p className="soft">{words.forms.typeAny}</p>
          </>
        )}
        {changesWithUnits(measure) && (
          <button
            type="button"
            className="link"
            onClick={() => {
              onOpen(false);
              edit(name, (site) => setUnits(site, other));
            }}
          >
            {text}
          </button>
        )}
      </Dialog>
    </Popover>
  );
}
