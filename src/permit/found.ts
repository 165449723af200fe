import type { WorkQuantities } from "../dig/index.js";
import type { FlowResult } from "../flow/index.js";
import type { SetbackKept } from "../safety/index.js";
import type { Scheme, Site } from "../site/index.js";

/** `by-hand`: a person says that it is shown elsewhere. */
export type ItemState = "present" | "missing" | "not-applicable" | "by-hand";

export interface ItemFound {
  state: ItemState;
  because: string;
}

/** What the list is held against. */
export interface PermitGround {
  site: Site;
  scheme: Scheme;
  works: readonly WorkQuantities[];
  flow: FlowResult;
  setbacks: readonly SetbackKept[];
}
