import { create } from "zustand";
import { USE_NOW } from "./talk.js";

/** How Bankyard itself stands on this device. */
export interface OnDevice {
  /** Whether the device says that it has a network. */
  hasNetwork: boolean;
  /**
   * `none` until the files of the page are on this device; `fresh` when they have just come for the
   * first time, which is told once; `there` from then on.
   */
  kept: "none" | "fresh" | "there";
  /** Why the page is not kept on this device, as the browser says it; empty when it is. */
  fault: string;
  /** A newer build lies here and waits to be used. */
  newer: ServiceWorker | null;
}

/** How Bankyard itself stands on this device. */
export const useOnDevice = create<OnDevice>()(() => ({
  hasNetwork: true,
  kept: "none",
  fault: "",
  newer: null,
}));

const HOUR_MS = 3_600_000;

/** Follows one worker on its way in: the first one is told as fresh, a later one as newer. */
function followWorker(worker: ServiceWorker): void {
  const look = (): void => {
    const hasOlder = navigator.serviceWorker.controller !== null;
    if (worker.state === "installed" && hasOlder) useOnDevice.setState({ newer: worker });
    if (worker.state === "activated" && useOnDevice.getState().kept === "none") {
      useOnDevice.setState({ kept: "fresh" });
    }
    if (worker.state === "redundant" && useOnDevice.getState().newer === worker) {
      useOnDevice.setState({ newer: null });
    }
  };
  worker.addEventListener("statechange", look);
  look();
}

/** Asks for a newer build when the page is looked at again after an hour or more. */
function askNowAndThen(registration: ServiceWorkerRegistration): void {
  let asked = Date.now();
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "visible" || Date.now() - asked < HOUR_MS) return;
    asked = Date.now();
    // Without a network there is nothing newer to be had; the next look asks again.
    registration.update().catch((fault: unknown) => useOnDevice.setState({ fault: String(fault) }));
  });
}

/**
 * Keeps the files of the page on this device. Where the browser does not allow it (no https, a
 * private window), the page works as any other page does, and `fault` says why.
 */
export async function keepOnDevice(): Promise<void> {
  if (!("serviceWorker" in navigator)) {
    useOnDevice.setState({ fault: "this browser, or this address, has no service workers" });
    return;
  }
  try {
    const registration = await navigator.serviceWorker.register("./serviceWorker.js");
    if (registration.active !== null) useOnDevice.setState({ kept: "there" });
    for (const worker of [registration.installing, registration.waiting]) {
      if (worker !== null) followWorker(worker);
    }
    registration.addEventListener("updatefound", () => {
      if (registration.installing !== null) followWorker(registration.installing);
    });
    askNowAndThen(registration);
  } catch (fault) {
    useOnDevice.setState({ fault: fault instanceof Error ? fault.message : String(fault) });
  }
}

/** Follows whether there is a network; returns what ends that. */
export function followNetwork(): () => void {
  const look = (): void => useOnDevice.setState({ hasNetwork: navigator.onLine });
  window.addEventListener("online", look);
  window.addEventListener("offline", look);
  look();
  return () => {
    window.removeEventListener("online", look);
    window.removeEventListener("offline", look);
  };
}

/** Lets the newer build take over and loads the page anew. Call it when nothing can be lost. */
export function changeToNewer(): void {
  const { newer } = useOnDevice.getState();
  if (newer === null) return;
  // It was asked for in another window of the same browser.
  if (newer.state === "activated") {
    location.reload();
    return;
  }
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), {
    once: true,
  });
  newer.postMessage(USE_NOW);
}
