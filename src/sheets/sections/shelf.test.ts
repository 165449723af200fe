import { expect, test } from "vitest";
import { inColumns, shelved } from "./shelf.js";

const room = { width: 100, height: 60 };

test("side by side as far as the row goes, then under the tallest of it", () => {
  const sizes = [
    { width: 40, height: 20 },
    { width: 50, height: 30 },
    { width: 60, height: 20 },
  ];
  expect(shelved(sizes, room, 5)).toEqual([
    [0, 0],
    [45, 0],
    [0, 35],
  ]);
});

test("null when one is too wide, or the rows too high together", () => {
  expect(shelved([{ width: 101, height: 5 }], room, 5)).toBeNull();
  const two = { width: 80, height: 30 };
  expect(shelved([two, two], room, 5)).toBeNull();
});

test("in columns three fit that do not fit in rows", () => {
  const sizes = [
    { width: 40, height: 20 },
    { width: 50, height: 35 },
    { width: 30, height: 50 },
  ];
  expect(shelved(sizes, room, 5)).toBeNull();
  expect(inColumns(sizes, room, 5)).toEqual([
    [0, 0],
    [0, 25],
    [55, 0],
  ]);
  expect(inColumns([...sizes, sizes[1]!], room, 5)).toBeNull();
});
