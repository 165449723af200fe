import { create } from "zustand";

/** What of the scene is shown, by the person's choice; kept with the device and not with the site. */
export interface Looks {
  /** Changed ground in the tones of its depth of cut or fill. */
  depths: boolean;
  /** The ground is seen through. */
  through: boolean;
  /** Digger and crane stand at their work. */
  machines: boolean;
  /** How far the setbacks reach. */
  setbacks: boolean;
  /** Ground that is steep by the site's rule. */
  steep: boolean;
  /** m between contours; null for what suits the lot's relief. */
  contourStep: number | null;
  /** Heights at the survey's points: as the leaf has them, always, or never. */
  heights: "leaf" | "on" | "off";
}

const KEY = "bankyard-looks";

export const PLAIN_LOOKS: Looks = {
  depths: false,
  through: false,
  machines: true,
  setbacks: false,
  steep: false,
  contourStep: null,
  heights: "leaf",
};

/** What was kept, as text; all that is not a choice of ours is as on a new device. */
export function readLooks(text: string | null): Looks {
  const kept = parsed(text);
  const flag = (name: "depths" | "through" | "machines" | "setbacks" | "steep"): boolean =>
    typeof kept[name] === "boolean" ? kept[name] : PLAIN_LOOKS[name];
  const { contourStep: step, heights } = kept;
  return {
    depths: flag("depths"),
    through: flag("through"),
    machines: flag("machines"),
    setbacks: flag("setbacks"),
    steep: flag("steep"),
    contourStep: typeof step === "number" && step > 0 && Number.isFinite(step) ? step : null,
    heights: heights === "on" || heights === "off" ? heights : "leaf",
  };
}

function parsed(text: string | null): Record<string, unknown> {
  if (text === null) return {};
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
  } catch {
    // Not our writing: a choice of looks is no loss.
    return {};
  }
}

/** The device's store, or null where the browser allows none; then choices last until a reload. */
export function deviceStore(): Storage | null {
  try {
    return globalThis.localStorage;
  } catch {
    return null;
  }
}

interface LooksStore extends Looks {
  /** False once this browser would not keep a choice: it then holds until the page is left. */
  kept: boolean;
  look: (change: Partial<Looks>) => void;
}

/** The choice of what the scene shows. */
export const useLooks = create<LooksStore>((set, get) => ({
  ...readLooks(deviceStore()?.getItem(KEY) ?? null),
  kept: true,
  look: (change) => {
    set(change);
    const { depths, through, machines, setbacks, steep, contourStep, heights } = get();
    const choice: Looks = { depths, through, machines, setbacks, steep, contourStep, heights };
    try {
      deviceStore()?.setItem(KEY, JSON.stringify(choice));
      set({ kept: true });
    } catch {
      set({ kept: false });
    }
  },
}));
