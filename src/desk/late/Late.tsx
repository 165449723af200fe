import { useEffect, useSyncExternalStore } from "react";
import type { ReactNode } from "react";
import { words } from "../../words/index.js";
import type { LatePart } from "./latePart.js";
import { loadAnew, serverAnswers } from "./loadAnew.js";

interface LateProps<Props> {
  part: LatePart<Props>;
  /** What stands in for it while its file comes. */
  coming: ReactNode;
  /** What to call it when it is missing, such as "this leaf". */
  name: string;
  /** How to do without it; leave out where it stands beside the rest of the page. */
  onLeave?: () => void;
  children: (Body: (props: Props) => ReactNode) => ReactNode;
}

/** Shows a late part as soon as it is there, at once if its file has come before. */
export function Late<Props>(props: LateProps<Props>): ReactNode {
  const { part, coming, name, onLeave, children } = props;
  const state = useSyncExternalStore(part.follow, part.now);
  useEffect(() => {
    if (part.now().is === "coming") void part.fetch();
  }, [part]);
  if (state.is === "here") return children(state.Body);
  if (state.is === "coming") return coming;
  return <Missing part={part} name={name} why={state.why} leave={onLeave} />;
}

/**
 * Some browsers never ask again for a file that they failed to fetch. If the server answers and the
 * part is still missing, only the page loaded anew gets it.
 */
async function fetchAgain<Props>(part: LatePart<Props>): Promise<void> {
  await part.fetch();
  if (part.now().is === "missing" && (await serverAnswers())) await loadAnew();
}

/** A part whose file cannot be fetched, and the way to it: by hand, or when the network is back. */
function Missing<Props>(props: {
  part: LatePart<Props>;
  name: string;
  why: string;
  leave: (() => void) | undefined;
}): ReactNode {
  const { part, name, why, leave } = props;
  useEffect(() => {
    const back = (): void => void part.fetch();
    window.addEventListener("online", back);
    return () => window.removeEventListener("online", back);
  }, [part]);
  return (
    <div className="late-missing" data-over={leave === undefined ? undefined : ""} role="alert">
      <h2>{words.offline.needsNetwork(name)}</h2>
      <p>{words.offline.needsNetworkWhy}</p>
      <div className="tools">
        <button
          type="button"
          className="button"
          autoFocus={leave !== undefined}
          onClick={() => void fetchAgain(part)}
        >
          {words.offline.tryAgain}
        </button>
        {leave !== undefined && (
          <button type="button" className="button" onClick={leave}>
            {words.offline.close}
          </button>
        )}
      </div>
      <details className="soft">
        <summary>{words.offline.whatWentWrong}</summary>
        {why}
      </details>
    </div>
  );
}

/** The open leaf while its file comes: said only when that takes long enough to be noticed. */
export function LeafComing(): ReactNode {
  return (
    <p className="leaf-coming" role="status">
      {words.offline.leafComing}
    </p>
  );
}
