/** `npm run schema`: writes shared/schema/site.schema.json from the schema in src/site. */
import { writeFileSync } from "node:fs";
import { siteJsonSchema } from "../site/index.js";

writeFileSync(
  new URL("../../shared/schema/site.schema.json", import.meta.url),
  `${JSON.stringify(siteJsonSchema(), null, 2)}\n`,
);
