export { existingGround } from "./existingGround.js";
export { layoutPlan } from "./layoutPlan.js";
export { excavationPlan } from "./excavationPlan.js";
