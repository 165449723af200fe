import type { ReactNode } from "react";
import { hasMark } from "../../site/index.js";
import type { Mark, Thing } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";
import { EyeIcon, LockIcon } from "./MarkButtons.js";

/** Lock and hide of one or several things, in words. */
export function MarkTools({ things }: { things: readonly Thing[] }): ReactNode {
  const { site, schemeId } = useSite();
  const set = useDesk((desk) => desk.mark);
  const { form } = words.picked;
  const all = (mark: Mark): boolean => things.every((one) => hasMark(site, schemeId, one, mark));
  const [locked, hidden] = [all("locked"), all("hidden")];
  return (
    <>
      <button type="button" className="link" onClick={() => set("locked", !locked, things)}>
        <LockIcon shut={locked} /> {locked ? form.unlock : form.lock}
      </button>
      <button type="button" className="link" onClick={() => set("hidden", !hidden, things)}>
        <EyeIcon struck={hidden} /> {hidden ? form.show : form.hide}
      </button>
    </>
  );
}

interface UnderLockProps {
  thing: Thing;
  of: { locked?: boolean | undefined; hidden?: boolean | undefined };
  children: ReactNode;
}

/** The fields of a thing, which take nothing while it is locked; says so, and that it is hidden. */
export function UnderLock({ thing, of, children }: UnderLockProps): ReactNode {
  const set = useDesk((desk) => desk.mark);
  const { form } = words.picked;
  const locked = of.locked === true;
  return (
    <>
      {locked && (
        <p className="says lock-note">
          <LockIcon shut /> {form.locked}{" "}
          <button type="button" className="link" onClick={() => set("locked", false, [thing])}>
            {form.unlock}
          </button>
        </p>
      )}
      {of.hidden === true && (
        <p className="says lock-note">
          <EyeIcon struck /> {form.hidden}{" "}
          <button type="button" className="link" onClick={() => set("hidden", false, [thing])}>
            {form.show}
          </button>
        </p>
      )}
      <fieldset className="under-lock" disabled={locked}>
        {locked && <legend className="unseen">{words.picked.list.isLocked}</legend>}
        {children}
      </fieldset>
    </>
  );
}
