import { useEffect, useState } from "react";
import { useMedia } from "../drawn/index.js";

export type Theme = "light" | "dark";

/** The theme that is shown, set on the page: the device's until the person chooses. */
export function useTheme(): [Theme, (theme: Theme) => void] {
  const [chosen, choose] = useState<Theme | null>(null);
  const night = useMedia("(prefers-color-scheme: dark)");
  const theme = chosen ?? (night ? "dark" : "light");
  useEffect(() => {
    document.documentElement.dataset["theme"] = theme;
  }, [theme]);
  return [theme, choose];
}
