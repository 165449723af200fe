import "./desk/fonts.css";
import "./desk/theme.css";
import "./desk/page.css";
import "./desk/leaf.css";
import "./desk/fields.css";
import "./desk/reach.css";
import "./desk/dialog.css";
import "./desk/report.css";
import "./desk/section.css";
import "./desk/flow.css";
import "./desk/offline.css";
import "./desk/book.css";
import "./desk/shelf.css";
import "./desk/looking.css";
import "./desk/picked.css";
import "./desk/permit.css";
import "./desk/limits.css";
import "./desk/drawing.css";
import "./desk/trench.css";
import "./desk/water.css";
import "./desk/sums.css";
import "./desk/handing.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./app.js";

const place = document.getElementById("desk");
if (place === null) throw new Error("expected an element with the id desk, got none");
createRoot(place).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
