/**
 * Which page of this browser may change a site: one at a time. A page holds a site by a Web Lock,
 * which the browser lets go of by itself when the page is closed or crashes. Where there are no
 * locks (a page that is not served securely) each page thinks it holds the site, and the revision
 * that is checked with every writing keeps one from writing over the other.
 */

/** What a page is told. */
export interface TurnEvents {
  /** A site that was held elsewhere is this page's now: its page was closed or handed it over. */
  onGranted: (id: string) => void;
  /** Another page took a site from this one. */
  onLost: (id: string) => void;
  /** Another page asks for a site: keep what is not kept yet. The site is let go of afterwards. */
  onAsked: (id: string) => Promise<void>;
  /** Another page changed the list or what is kept of a site. */
  onShelfChanged: (id: string) => void;
}

type Said = { say: "hand over" | "changed"; id: string };

interface Claim {
  isHeld: boolean;
  /** Gives the lock back. */
  free: () => void;
  /** Ends the waiting for it. */
  stop: AbortController;
}

/** How long another page that is just being closed is waited for, ms. */
const WAIT = 500;
/** How long a page that was asked has to keep what it has, ms. A sleeping page does not answer. */
const PATIENCE = 2500;

const lockName = (id: string): string => `bankyard site ${id}`;

export class Turns {
  private readonly claims = new Map<string, Claim>();
  private locks: LockManager | undefined;
  private channel: BroadcastChannel | null = null;
  private events: TurnEvents | null = null;

  /** Begins to listen to the other pages. */
  listen(events: TurnEvents): void {
    this.events = events;
    // The type says that there always is one; on a page that is not secure there is not.
    this.locks = (navigator as Partial<Navigator>).locks;
    this.channel = new BroadcastChannel("bankyard");
    this.channel.addEventListener("message", ({ data }) => void this.hear(data as Said));
  }

  /** Asks for a site. True when it is this page's; when false, the asking goes on. */
  async take(id: string): Promise<boolean> {
    const known = this.claims.get(id);
    if (known?.isHeld === true || this.locks === undefined) return true;
    this.letGo(id);
    return this.within(id, this.request(id, {}), WAIT);
  }

  /** Makes a site this page's, though another holds it: that one is asked, and not for ever. */
  async takeOver(id: string): Promise<void> {
    if (this.claims.get(id)?.isHeld === true || this.locks === undefined) return;
    this.letGo(id);
    const granted = this.request(id, {});
    this.say({ say: "hand over", id });
    if (await this.within(id, granted, PATIENCE)) return;
    this.letGo(id);
    await this.request(id, { steal: true });
  }

  /** Gives a site back, or ends the asking for it. */
  letGo(id: string): void {
    const claim = this.claims.get(id);
    if (claim === undefined) return;
    this.claims.delete(id);
    claim.free();
    claim.stop.abort();
  }

  /** Tells the other pages that what is kept of a site has changed, or the list. */
  tellChanged(id: string): void {
    this.say({ say: "changed", id });
  }

  /** The ids of the sites that other pages hold. */
  async elsewhere(): Promise<Set<string>> {
    const held = (await this.locks?.query())?.held ?? [];
    const ids = held.map(({ name }) => name ?? "").filter((name) => name.startsWith(lockName("")));
    return new Set(
      ids
        .map((name) => name.slice(lockName("").length))
        .filter((id) => this.claims.get(id)?.isHeld !== true),
    );
  }

  private say(said: Said): void {
    this.channel?.postMessage(said);
  }

  private async hear({ say, id }: Said): Promise<void> {
    if (say === "changed") {
      this.events?.onShelfChanged(id);
      return;
    }
    if (this.claims.get(id)?.isHeld !== true) return;
    await this.events?.onAsked(id);
    this.letGo(id);
    this.events?.onLost(id);
  }

  /** Resolves when the lock is this page's. */
  private request(id: string, how: { steal?: true }): Promise<true> {
    const { locks } = this;
    if (locks === undefined) return Promise.resolve(true);
    const stop = new AbortController();
    return new Promise((granted) => {
      const claim: Claim = { isHeld: false, free: () => undefined, stop };
      this.claims.set(id, claim);
      const hold = (): Promise<void> =>
        new Promise((free) => {
          claim.isHeld = true;
          claim.free = free;
          granted(true);
        });
      // A lock that is stolen cannot be waited for, so it takes no signal.
      const options = how.steal === true ? { steal: true } : { signal: stop.signal };
      locks.request(lockName(id), options, hold).catch((fault: unknown) => {
        // Taken by another page, or no longer asked for: then the claim is not ours any more.
        const isTaken = this.claims.get(id) === claim && claim.isHeld;
        if (isTaken) {
          this.claims.delete(id);
          this.events?.onLost(id);
        } else if (!stop.signal.aborted) throw fault;
      });
    });
  }

  /** Whether a lock comes in time; if it comes later, the page is told. */
  private within(id: string, granted: Promise<true>, ms: number): Promise<boolean> {
    return new Promise((answer) => {
      let isLate = false;
      const timer = setTimeout(() => {
        isLate = true;
        answer(false);
      }, ms);
      void granted.then(() => {
        clearTimeout(timer);
        answer(true);
        if (isLate) this.events?.onGranted(id);
      });
    });
  }
}
