import type { ReactNode } from "react";
import { Button, Menu, MenuItem, MenuTrigger, Popover } from "react-aria-components";
import { words } from "../../words/index.js";
import { MoreIcon } from "./icons.js";
import { openPanel } from "./panels.js";
import { useNarrow } from "./screen.js";

const says = words.book;

/** What helps with the book itself; on a phone also what has no room in the head. */
export function HeadMenu(): ReactNode {
  const narrow = useNarrow();
  return (
    <MenuTrigger>
      <Button className="round" aria-label={says.menu.title}>
        <MoreIcon />
      </Button>
      <Popover className="menu-popover" placement="bottom end">
        <Menu className="menu" aria-label={says.menu.title}>
          {narrow && (
            <MenuItem id="steps" onAction={() => openPanel("steps")}>
              {says.steps.title}
            </MenuItem>
          )}
          <MenuItem id="keys" onAction={() => openPanel("keys")}>
            {says.keys.title}
          </MenuItem>
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
