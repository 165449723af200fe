export { changeToNewer, followNetwork, keepOnDevice, useOnDevice } from "./onDevice.js";
export type { OnDevice } from "./onDevice.js";
