export { checklist } from "./checklist.js";
export type { Checklist, ChecklistItem } from "./checklist.js";
export type { ItemState, PermitGround } from "./found.js";
