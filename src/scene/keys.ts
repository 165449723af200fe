/** Whether the keys belong to what has the focus: a field, a list, a menu, a dialog, a slider. */
export function typesElsewhere(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  const owner = "input, textarea, select, summary, [contenteditable], ";
  const roles = "[role=dialog], [role=menu], [role=listbox], [role=slider], [role=tablist]";
  return target.closest(owner + roles) !== null;
}
