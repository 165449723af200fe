import type { ReactNode } from "react";

/** How a part of the page that is fetched when it is wanted stands. */
export type LateState<Props> =
  | { is: "coming" }
  | { is: "here"; Body: (props: Props) => ReactNode }
  | { is: "missing"; why: string };

/**
 * A part of the page with a file of its own. It is not React's `lazy`, which shows what stands in
 * for a part once more even if its file is there, and which never asks again after a failure.
 */
export interface LatePart<Props> {
  /** Fetches it, or fetches it again after it was missing; resolves when that has ended. */
  fetch: () => Promise<void>;
  now: () => LateState<Props>;
  /** Calls back at each change; returns what ends that. */
  follow: (changed: () => void) => () => void;
}

/** A part that `load` brings. */
export function latePart<Props>(load: () => Promise<(props: Props) => ReactNode>): LatePart<Props> {
  let state: LateState<Props> = { is: "coming" };
  let fetching: Promise<void> | null = null;
  const followers = new Set<() => void>();

  function become(next: LateState<Props>): void {
    state = next;
    for (const changed of followers) changed();
  }

  async function fetchOnce(): Promise<void> {
    try {
      become({ is: "here", Body: await load() });
    } catch (fault) {
      fetching = null;
      become({ is: "missing", why: fault instanceof Error ? fault.message : String(fault) });
    }
  }

  return {
    fetch() {
      if (fetching === null && state.is === "missing") become({ is: "coming" });
      fetching ??= fetchOnce();
      return fetching;
    },
    now: () => state,
    follow(changed) {
      followers.add(changed);
      return () => void followers.delete(changed);
    },
  };
}

/** Fetches parts one after the other, so that what is wanted meanwhile need not queue behind all. */
export async function fetchInTurn(
  parts: readonly { fetch: () => Promise<void> }[],
  atRest: () => Promise<void>,
): Promise<void> {
  for (const part of parts) {
    await atRest();
    await part.fetch();
  }
}
