import { useEffect } from "react";
import type { ReactNode } from "react";
import { Desk } from "./desk/index.js";
import { useDesk } from "./store/index.js";

let begun = false;

/** The whole app: opens what was kept, then shows the desk. */
export function App(): ReactNode {
  const begin = useDesk((desk) => desk.begin);
  useEffect(() => {
    if (begun) return;
    begun = true;
    void begin();
  }, [begin]);
  return <Desk />;
}
