import "./noEval.js";

export { givenSite } from "./givenSite.js";
export { Viewer } from "./Viewer.js";
