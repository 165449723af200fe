import { describe, expect, it } from "vitest";
import { checkNode, PrepareError } from "./prepare.mjs";

describe("checkNode", () => {
  it.each(["20.19.0", "20.19.1", "20.20.0", "22.0.0", "100.0.0"])("accepts Node %s", (version) => {
    expect(() => {
      checkNode(version);
    }).not.toThrow();
  });

  it.each(["20.18.9", "18.20.4", "8.19.0"])(
    "refuses Node %s and says what is needed",
    (version) => {
      expect(() => {
        checkNode(version);
      }).toThrow(PrepareError);
      expect(() => {
        checkNode(version);
      }).toThrow(`needs Node 20.19.0 or later; this is Node ${version}`);
    },
  );
});
