import { describe, expect, it } from "vitest";
import { plainSite } from "../site/site.fixture.js";
import { words } from "../words/index.js";
import { openedSays } from "./openLink.js";

describe("what is said of a site out of a link", () => {
  const site = plainSite({});

  it("is that it is a copy, and no more of one that is whole", () => {
    expect(openedSays(site)).toBe(words.link.opened(site.name));
  });

  it("names what its maker left out", () => {
    const bare = openedSays({ ...site, leftOut: ["names"] });
    expect(bare).toContain(words.link.without.names);
    expect(bare).not.toContain(words.link.without.costs);
    expect(openedSays({ ...site, leftOut: ["costs", "names"] })).toContain(
      words.link.without.costs,
    );
  });
});
