import { useEffect, useState } from "react";
import type { ReactNode } from "react";
import { flushSync } from "react-dom";
import { ReportBody } from "../late/overPage.js";

/** The day in words that cannot be read two ways, such as "25 November 2026". */
function today(): string {
  return new Date().toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
}

/**
 * What is printed instead of the page. It is drawn only when the browser is about to print, so
 * that it costs nothing while people work.
 */
export function Report(): ReactNode {
  // The day it is printed on; null while nothing is printed.
  const [printing, setPrinting] = useState(() =>
    window.matchMedia("print").matches ? today() : null,
  );
  useEffect(() => {
    const paper = window.matchMedia("print");
    const begin = (): void => flushSync(() => setPrinting(today()));
    const end = (): void => setPrinting(null);
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
  return printing === null ? null : <ReportBody date={printing} />;
}
