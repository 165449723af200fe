/** Order along a Hilbert curve: what is near in plan comes to lie near in memory. */

/** Bits of each coordinate in a key: the box is seen as 65,536 columns and rows. */
const BITS = 16;
const COLUMNS = 2 ** BITS;

/**
 * Four bits of x and of y at once. The curve's orientation is two bits (1: x and y exchanged, 2:
 * both reversed); entry `orientation << 8 | x << 4 | y` holds `next orientation << 8 | key`.
 */
const STEPS = curveSteps();

function curveSteps(): Uint16Array {
  const steps = new Uint16Array(4 << 8);
  for (let entry = 0; entry < steps.length; entry++) {
    let orientation = entry >> 8;
    let key = 0;
    for (let bit = 3; bit >= 0; bit--) {
      const reverse = orientation >> 1;
      const p = ((entry >> (4 + bit)) & 1) ^ reverse;
      const q = ((entry >> bit) & 1) ^ reverse;
      const [x, y] = (orientation & 1) === 1 ? [q, p] : [p, q];
      key = (key << 2) | ((3 * x) ^ y);
      if (y === 0) orientation ^= x === 1 ? 3 : 1;
    }
    steps[entry] = (orientation << 8) | key;
  }
  return steps;
}

/** Place along the Hilbert curve (0 up to 2³²) of a column and a row, whole numbers below 2¹⁶. */
export function hilbertKey(column: number, row: number): number {
  let step = STEPS[((column >> 12) << 4) | (row >> 12)]!;
  let key = step & 255;
  step = STEPS[(step & 768) | (((column >> 8) & 15) << 4) | ((row >> 8) & 15)]!;
  key = (key << 8) | (step & 255);
  step = STEPS[(step & 768) | (((column >> 4) & 15) << 4) | ((row >> 4) & 15)]!;
  key = (key << 8) | (step & 255);
  step = STEPS[(step & 768) | ((column & 15) << 4) | (row & 15)]!;
  return ((key << 8) | (step & 255)) >>> 0;
}

/** The square from the south-west corner of places that holds them all, in their unit. */
export interface Frame {
  west: number;
  south: number;
  size: number;
}

/** The frame of places given as x, y, z of each; its size is 0 when they are all one. */
export function frameOf(rows: Float64Array): Frame {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < rows.length; i += 3) {
    const x = rows[i]!;
    const y = rows[i + 1]!;
    if (x < west) west = x;
    if (x > east) east = x;
    if (y < south) south = y;
    if (y > north) north = y;
  }
  return { west, south, size: Math.max(east - west, north - south) };
}

/** Columns, and rows, per unit of length in a frame. */
export function columnsPerUnit({ size }: Frame): number {
  return size > 0 ? (COLUMNS - 1) / size : 0;
}

/** Keys along the curve over their frame of places given as x, y, z of each. */
export function keysOf(frame: Frame, rows: Float64Array): Uint32Array {
  const { west, south } = frame;
  const scale = columnsPerUnit(frame);
  const keys = new Uint32Array(rows.length / 3);
  for (let i = 0; i < keys.length; i++) {
    const column = ((rows[3 * i]! - west) * scale) | 0;
    const row = ((rows[3 * i + 1]! - south) * scale) | 0;
    keys[i] = hilbertKey(column, row);
  }
  return keys;
}

/** Keys are sorted by eight bits at a time: few enough heaps for the processor's caches. */
const DIGIT_BITS = 8;
const DIGITS = 1 << DIGIT_BITS;

/**
 * Numbers 0, 1, 2 … in the order of their keys; equal keys stay in order. Sorts `keys` with them. A
 * radix sort, so its time grows with the count alone.
 */
export function orderOf(keys: Uint32Array): Uint32Array {
  const count = keys.length;
  const starts = heapStarts(keys);
  let [fromKeys, toKeys]: [Uint32Array, Uint32Array] = [keys, new Uint32Array(count)];
  let [from, to] = [new Uint32Array(count), new Uint32Array(count)];
  for (let i = 0; i < count; i++) from[i] = i;
  for (let pass = 0; pass < 32 / DIGIT_BITS; pass++) {
    const shift = DIGIT_BITS * pass;
    const heap = starts.subarray(DIGITS * pass, DIGITS * (pass + 1));
    for (let i = 0; i < count; i++) {
      const key = fromKeys[i]!;
      const digit = (key >>> shift) & (DIGITS - 1);
      const place = heap[digit]!;
      heap[digit] = place + 1;
      toKeys[place] = key;
      to[place] = from[i]!;
    }
    [fromKeys, toKeys] = [toKeys, fromKeys];
    [from, to] = [to, from];
  }
  return from;
}

/** For each pass and digit, how many keys have a smaller digit there. */
function heapStarts(keys: Uint32Array): Uint32Array {
  const starts = new Uint32Array((DIGITS * 32) / DIGIT_BITS);
  for (let i = 0; i < keys.length; i++) {
    const key = keys[i]!;
    starts[key & 255]!++;
    starts[256 + ((key >>> 8) & 255)]!++;
    starts[512 + ((key >>> 16) & 255)]!++;
    starts[768 + (key >>> 24)]!++;
  }
  let sum = 0;
  for (let heap = 0; heap < starts.length; heap++) {
    if (heap % DIGITS === 0) sum = 0;
    const size = starts[heap]!;
    starts[heap] = sum;
    sum += size;
  }
  return starts;
}
