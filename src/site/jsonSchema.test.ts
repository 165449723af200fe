import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { siteJsonSchema } from "./jsonSchema.js";

it("the JSON Schema on file is the one that the code writes (npm run schema)", () => {
  const file = new URL("../../shared/schema/site.schema.json", import.meta.url);
  expect(JSON.parse(readFileSync(file, "utf8"))).toEqual(
    JSON.parse(JSON.stringify(siteJsonSchema())),
  );
});
