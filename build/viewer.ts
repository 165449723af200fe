// Gives the app the page of one file that a site is handed over in, before a site is put into it.
import type { Plugin } from "vite";
import { viewerTemplate } from "../src/cli/viewerTemplate.js";

const NAME = "viewer.html";

/** Adds `viewer.html` to the build, and answers for it while developing. */
export function viewerPage(): Plugin {
  let root = "";
  return {
    name: "bankyard:viewer",
    configResolved: (config) => void (root = config.root),
    async generateBundle() {
      this.emitFile({ type: "asset", fileName: NAME, source: await viewerTemplate(root) });
    },
    configureServer(server) {
      server.middlewares.use(`/${NAME}`, (_, answer, next) => {
        viewerTemplate(root).then(
          (page) => answer.setHeader("Content-Type", "text/html").end(page),
          next,
        );
      });
    },
  };
}
