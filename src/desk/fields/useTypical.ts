import { typicalOf } from "../../store/index.js";
import type { TypicalKey } from "../../store/index.js";
import { useSite } from "../useSite.js";
import type { TypicalValue } from "./Typical.js";

/** What a newly placed work has in this field. */
export function useTypical(key: TypicalKey): TypicalValue {
  return typicalOf(useSite().site, key);
}
