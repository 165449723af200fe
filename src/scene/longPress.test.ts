import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { LONG_PRESS_MS, LongPress } from "./longPress.js";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe("LongPress", () => {
  const at = { left: 100, top: 100 };

  it("fires once when the finger rests, though it wavers a little", () => {
    const fire = vi.fn();
    const press = new LongPress();
    press.begin(at, fire);
    press.move({ left: 105, top: 104 });
    vi.advanceTimersByTime(LONG_PRESS_MS - 1);
    expect(fire).not.toHaveBeenCalled();
    vi.advanceTimersByTime(1);
    press.move({ left: 300, top: 100 });
    vi.advanceTimersByTime(2000);
    expect(fire).toHaveBeenCalledTimes(1);
  });

  it("does not fire once the finger has gone on its way, even if it comes back", () => {
    const fire = vi.fn();
    const press = new LongPress();
    press.begin(at, fire);
    press.move({ left: 109, top: 100 });
    press.move(at);
    vi.advanceTimersByTime(2000);
    expect(fire).not.toHaveBeenCalled();
  });

  it("does not fire when the finger is lifted, and counts anew from the next", () => {
    const [first, second] = [vi.fn(), vi.fn()];
    const press = new LongPress();
    press.begin(at, first);
    vi.advanceTimersByTime(400);
    press.end();
    press.begin(at, second);
    vi.advanceTimersByTime(400);
    expect(second).not.toHaveBeenCalled();
    vi.advanceTimersByTime(100);
    expect(first).not.toHaveBeenCalled();
    expect(second).toHaveBeenCalledTimes(1);
  });
});
