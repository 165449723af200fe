// The script inside the page of one file: `src/cli/viewerTemplate.ts` builds the template with it.
import "./desk/fonts.css";
import "./desk/theme.css";
import "./desk/page.css";
import "./desk/leaf.css";
import "./desk/section.css";
import "./desk/looking.css";
import "./desk/shading.css";
import "./desk/drawing.css";
import "./viewer/viewer.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { givenSite, Viewer } from "./viewer/index.js";

const place = document.getElementById("desk");
if (place === null) throw new Error("expected an element with the id desk, got none");
createRoot(place).render(
  <StrictMode>
    <Viewer given={givenSite(document)} />
  </StrictMode>,
);
