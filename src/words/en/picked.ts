/** Texts about what is picked: several at once, locking, hiding, raising, copying, order. */
export const picked = {
  /** What several picked things are called together, in an undo step too. */
  works: (count: string) => `${count} works`,
  things: (count: string) => `${count} things`,
  and: (names: readonly string[]) =>
    names.length < 2 ? (names[0] ?? "") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`,

  steps: {
    move: (name: string) => `move ${name}`,
    nudge: (name: string) => `nudge ${name}`,
    raise: (name: string) => `raise ${name}`,
    lower: (name: string) => `lower ${name}`,
    copy: (name: string) => `copy ${name}`,
    copyTo: (name: string, scheme: string) => `copy ${name} to ${scheme}`,
    remove: (name: string) => `remove ${name}`,
    lock: (name: string) => `lock ${name}`,
    unlock: (name: string) => `unlock ${name}`,
    hide: (name: string) => `hide ${name}`,
    show: (name: string) => `show ${name}`,
    showAll: "show all",
    order: (name: string) => `building order of ${name}`,
  },

  told: {
    isLocked: (names: string) => `Locked: ${names}. Unlock to change it.`,
    lockedStayed: (names: string) => `Locked, and left as it was: ${names}.`,
    removed: (name: string) => `Removed ${name}. Undo brings it back.`,
    removedWith: (name: string, over: string) =>
      `Removed ${name}, and ${over} that lay over it. Undo brings all back.`,
    removedAll: (name: string) => `Removed ${name}. Undo brings them back.`,
    lastPoints: "A survey needs three points at least: add one before removing this.",
    notCopied: (name: string) =>
      `${name} lies over a work: a second one would find nothing to take.`,
    copiedTo: (name: string, scheme: string) => `Copied ${name} to ${scheme}.`,
    hidden: (name: string) => `Hidden, still counted: ${name}.`,
    notRaised: "It goes by the ground or by what was measured: there is no height to change.",
  },

  list: {
    name: "Works in building order",
    why: "Built from the top down: each finds the ground as those above left it, so order counts.",
    row: (name: string) => name,
    isHidden: "hidden, still counted",
    isLocked: "locked",
    several: "Pick several",
    severalOn: "Tap rows or the scene to add or take away.",
    all: "Pick all",
    drag: (name: string) => `Move ${name} in the building order`,
    before: (name: string) => `Before ${name}`,
    showAll: (count: string) => `Show all (${count} hidden)`,
  },

  lock: (name: string) => `Lock ${name}`,
  unlock: (name: string) => `Unlock ${name}`,
  hide: (name: string) => `Hide ${name} in the scene`,
  show: (name: string) => `Show ${name} in the scene`,

  form: {
    copy: "Copy",
    copyTo: "Copy to scheme…",
    copyToLabel: "Copy to scheme",
    earlier: "Build earlier",
    later: "Build later",
    lock: "Lock",
    unlock: "Unlock",
    hide: "Hide",
    show: "Show",
    remove: "Remove",
    letGo: "Let go",
    locked: "Locked: nothing of it can be changed here.",
    hidden: "Hidden in the scene, still counted.",
    severalHead: (count: string) => `${count} picked`,
    moveEast: "Move east",
    moveNorth: "Move north",
    moveUp: "Move up",
    goesByGround: "Move up leaves what goes by the ground: strips, heaps, pipes by cover, probes.",
    move: "Move them",
    someLocked: (names: string) => `Locked, stays: ${names}.`,
  },

  bar: {
    none: "Tap works to pick several.",
    form: "Change them",
    done: "Done",
  },

  keys: {
    raise: "Raise or lower what is picked by one step",
    raiseFar: "Raise or lower what is picked by ten steps",
    all: "Pick all works",
    add: "Held with a click: add to what is picked or take away",
  },

  scene: {
    raise: (name: string, elevation: string) => `Raise ${name}, at elevation ${elevation}`,
    grip: "Raise",
  },
};
