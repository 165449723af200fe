import { useEffect, useState } from "react";
import type { ReactNode } from "react";
import { flushSync } from "react-dom";
import { ReportBody } from "./ReportBody.js";

/**
 * What is printed instead of the page. It is drawn only when the browser is about to print, so
 * that it costs nothing while people work.
 */
export function Report(): ReactNode {
  const [printing, setPrinting] = useState(() => window.matchMedia("print").matches);
  useEffect(() => {
    const paper = window.matchMedia("print");
    const begin = (): void => flushSync(() => setPrinting(true));
    const end = (): void => setPrinting(false);
    const follow = (): void => (paper.matches ? begin() : end());
    window.addEventListener("beforeprint", begin);
    window.addEventListener("afterprint", end);
    paper.addEventListener("change", follow);
    return () => {
      window.removeEventListener("beforeprint", begin);
      window.removeEventListener("afterprint", end);
      paper.removeEventListener("change", follow);
    };
  }, []);
  return printing ? <ReportBody /> : null;
}
