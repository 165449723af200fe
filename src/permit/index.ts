export { checklist, PERMIT_ITEMS } from "./checklist.js";
export type { Checklist, ChecklistItem } from "./checklist.js";
export type { ItemState, PermitGround } from "./found.js";
