import { useMemo, useState } from "react";
import type { ReactNode } from "react";
import { copyWithout, linkOf } from "../../handover/index.js";
import { useHandover } from "../../store/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";

const says = words.link;

/** The link that holds all of the site: its length, and the way to copy it while it is not too long. */
export function CopyLink(): ReactNode {
  const { site } = useSite();
  const leftOut = useHandover((hand) => hand.leftOut);
  const link = useMemo(
    () => linkOf(copyWithout(site, leftOut), window.location.href),
    [site, leftOut],
  );
  const [done, setDone] = useState<{ address: string; text: string } | null>(null);
  const copy = async (): Promise<void> => {
    const { address } = link;
    try {
      await navigator.clipboard.writeText(address);
      setDone({ address, text: says.copied });
    } catch {
      // Not served securely, or not allowed: then the link is there to be copied by hand.
      setDone({ address, text: says.notCopied });
    }
  };
  const told = done?.address === link.address ? done.text : "";
  return (
    <div data-link={link.fit} data-length={link.length}>
      <p className="says">{leftOut.length === 0 ? says.says : says.saysLess}</p>
      <p className="says">{link.says}</p>
      {link.fit !== "over" && (
        <div className="tools">
          <button type="button" className="button" onClick={() => void copy()}>
            {says.copy}
          </button>
        </div>
      )}
      {told === says.notCopied && (
        <input
          className="plain-input"
          aria-label={says.address}
          readOnly
          value={link.address}
          onFocus={(event) => event.currentTarget.select()}
        />
      )}
      <p className="says" role="status">
        {told}
      </p>
    </div>
  );
}
