export { Desk } from "./Desk.js";
