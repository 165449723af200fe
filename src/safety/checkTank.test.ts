import { describe, expect, it } from "vitest";
import { digOf, schemeOf, workOf } from "../dig/dig.fixture.js";
import type { PipeRun } from "../dig/index.js";
import { wordingFor } from "../flow/index.js";
import type { Tank } from "../site/index.js";
import { plainSite, plainTank } from "../site/site.fixture.js";
import { checkPower } from "./checkPower.js";
import { checkTank } from "./checkTank.js";

const words = wordingFor("us");

function codes(change: Partial<Tank>, ground: number, materialsMet: string[] = ["clay"]): string[] {
  const hole = workOf({ id: "tank", materialsMet });
  const around = { site: plainSite({}), words, groundAt: () => ground };
  return checkTank(plainTank(change) as Tank, hole, around).map(({ code }) => code);
}

// Maricopa County (Arizona) guidance: risers where the top is over 12 in deep; 6 in of pea gravel
// or sand under the tank where the rock is jagged (read).
describe("a tank's place", () => {
  it("asks for risers from 12 in of ground over its top, and not under", () => {
    const top = 99.5;
    expect(codes({}, top + 0.3048)).toEqual([]);
    expect(codes({}, top + 0.3048 + 0.01)).toEqual(["tank.riser"]);
    expect(codes({}, NaN)).toEqual([]);
  });

  it("asks for 6 in of pea gravel or sand on rock, and only there", () => {
    const bed = (depth: number, material = "pea-gravel") => ({ bedding: { depth, material } });
    const rock = ["clay", "shelf-rock"];
    expect(codes(bed(0.1524), 99, rock)).toEqual([]);
    expect(codes(bed(0.14), 99, rock)).toEqual(["tank.rock-bedding"]);
    expect(codes(bed(0.3, "crushed-gravel"), 99, rock)).toEqual(["tank.rock-bedding"]);
    expect(codes(bed(0.3, "drain-sand"), 99, rock)).toEqual([]);
    expect(codes(bed(0.05), 99)).toEqual([]);
  });
});

describe("power for a pump (NEC 430.102 read; 25 Pa. Code 73.46)", () => {
  const run = (service: PipeRun["service"]): PipeRun => ({
    ...{ id: service, name: service, trench: "t", service, inside: 0.05, outside: 0.06 },
    ...{ material: "pvc", length: 1, fall: 0, drop: 0, cover: { least: 1, most: 1 }, stations: [] },
  });

  it("is spoken of where there is a pump or a pipe under pressure", () => {
    expect(checkPower(schemeOf(), digOf([], {}, [run("gravity")]))).toEqual([]);
    const [found] = checkPower(schemeOf(), digOf([], {}, [run("pressure")]));
    expect(found).toMatchObject({ code: "power.pump", where: "t" });
    expect(found?.text).toContain("No conduit is drawn");
    const [drawn] = checkPower(schemeOf(), digOf([], {}, [run("pressure"), run("conduit")]));
    expect(drawn?.text).not.toContain("No conduit");
  });
});
