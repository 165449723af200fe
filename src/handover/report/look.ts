/** How the report looks, and what opens all of it: on a press, and before it is printed. */
export const REPORT_STYLE = `
:root { color-scheme: light; --ink: #26323a; --soft: #565e59; --rule: #d9cdb0; --paper: #f7f2e4; }
* { box-sizing: border-box; }
body { max-width: 60rem; margin: 0 auto; padding: 24px 16px 64px; color: var(--ink);
  background: var(--paper); font: 16px/1.5 "Public Sans", system-ui, sans-serif;
  font-variant-numeric: tabular-nums; }
h1, h2 { font-family: "Zilla Slab", Rockwell, serif; line-height: 1.2; }
h1 { margin: 0 0 8px; font-size: 1.75rem; }
h2 { margin: 32px 0 8px; padding-bottom: 4px; border-bottom: 2px solid var(--ink); }
header p { margin: 2px 0; }
button { min-height: 44px; margin-top: 12px; padding: 8px 16px; font: inherit; color: var(--ink);
  background: none; border: 1px solid var(--ink); cursor: pointer; }
details { border-bottom: 1px solid var(--rule); }
summary { display: flex; gap: 16px; align-items: baseline; min-height: 40px; padding: 8px 0;
  cursor: pointer; }
summary::before { content: "+"; width: 1ch; color: var(--soft); }
details[open] > summary::before { content: "–"; }
summary span { flex: 1; }
details > div { padding: 0 0 14px 2ch; }
table { border-collapse: collapse; margin: 6px 0; }
th, td { padding: 3px 18px 3px 0; text-align: start; font-weight: 400; border-bottom: 1px solid var(--rule); }
td { text-align: end; }
thead th { font-size: 0.85rem; color: var(--soft); }
.source { font-size: 0.875rem; color: var(--soft); }
li { margin: 4px 0; }
@media print {
  body { max-width: none; padding: 0; background: none; font-size: 10pt; }
  button { display: none; }
  details, tr { break-inside: avoid; }
  h2 { break-after: avoid; }
}
`;

export const REPORT_SCRIPT = `
const all = () => [...document.querySelectorAll("details")];
const button = document.getElementById("all");
const open = button.textContent;
button.addEventListener("click", () => {
  const isOpen = all().every((one) => one.open);
  for (const one of all()) one.open = !isOpen;
  button.textContent = isOpen ? open : button.dataset.close;
});
addEventListener("beforeprint", () => { for (const one of all()) one.open = true; });
`;
