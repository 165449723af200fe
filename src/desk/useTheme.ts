import { useEffect } from "react";
import { useMedia } from "../drawn/index.js";
import { useDesk } from "../store/index.js";

/** The theme that is shown: the person's choice, else the device's. Sets it on the page. */
export function useTheme(): "light" | "dark" {
  const chosen = useDesk((desk) => desk.theme);
  const night = useMedia("(prefers-color-scheme: dark)");
  const theme = chosen === "system" ? (night ? "dark" : "light") : chosen;
  useEffect(() => {
    document.documentElement.dataset["theme"] = theme;
  }, [theme]);
  return theme;
}

/** Whether the person asked for less motion. */
export const useReducedMotion = (): boolean => useMedia("(prefers-reduced-motion: reduce)");

/** Whether the person asked for less data: then the picture spares the device too. */
export const useReducedData = (): boolean => useMedia("(prefers-reduced-data: reduce)");
