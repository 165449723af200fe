import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { isZip, unzipSites, zipSites } from "./zip.js";

const bytesOf = async (zip: Blob): Promise<Uint8Array> => new Uint8Array(await zip.arrayBuffer());

describe("a zip of sites", () => {
  it("gives back every text under a name of its own", async () => {
    const long = JSON.stringify({
      name: "Wide",
      points: Array.from({ length: 90_000 }, (_, i) => i),
    });
    const sites = [
      { name: "Field", text: '{"a": "ü ½"}' },
      { name: "Field", text: "{}" },
      { name: "Wide", text: long },
      { name: "Empty", text: "" },
    ];
    const zip = await bytesOf(await zipSites(sites));
    expect(isZip(zip)).toBe(true);
    expect(zip.length).toBeLessThan(long.length);
    expect(unzipSites(zip)).toEqual([
      { file: "field.site.json", text: '{"a": "ü ½"}' },
      { file: "field-2.site.json", text: "{}" },
      { file: "wide.site.json", text: long },
      { file: "empty.site.json", text: "" },
    ]);
  });

  it("leaves alone what is no site file", () => {
    const zip = zipSync({
      "sites/one.site.json": strToU8("{}"),
      "__MACOSX/sites/._one.site.json": strToU8("x"),
      "sites/.hidden.json": strToU8("x"),
      "photo.webp": strToU8("x"),
    });
    expect(unzipSites(zip).map(({ file }) => file)).toEqual(["sites/one.site.json"]);
  });

  it("says when a zip is cut off, and when it is none", () => {
    const zip = zipSync({ "one.site.json": strToU8("{}".repeat(500)) });
    expect(() => unzipSites(zip.subarray(0, 60))).toThrow(/damaged/);
    expect(isZip(strToU8('{"format": "bankyard-site"}'))).toBe(false);
    expect(isZip(new Uint8Array())).toBe(false);
  });

  it("does not unpack far more than sites would be", () => {
    const zip = zipSync({ "one.site.json": strToU8("{}") });
    // The size unpacked, in the central directory: four bytes at 24 after its mark.
    const view = new DataView(zip.buffer, zip.byteOffset);
    const at = zip.findIndex(
      (_, i) => i + 4 < zip.length && view.getUint32(i, true) === 0x02014b50,
    );
    view.setUint32(at + 24, 400 * 1024 * 1024, true);
    expect(() => unzipSites(zip)).toThrow(/more than sites/);
  });
});
