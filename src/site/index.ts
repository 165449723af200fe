export { NATIVE, siteSchema } from "./schema.js";
export type {
  Bed,
  Building,
  Layer,
  Limit,
  Material,
  MaterialKind,
  Pad,
  Pile,
  Pipe,
  PlanPoint,
  PriceChoice,
  Probe,
  Scheme,
  Site,
  SurveyPoint,
  Tank,
  Trench,
  Walls,
  Work,
} from "./schema.js";
export type { Finding, Quantity } from "./finding.js";
export { problemLine } from "./problem.js";
export type { Outcome, SiteProblem, SiteProblemCode } from "./problem.js";
