import type { ReactNode } from "react";
import { Button, Menu, MenuItem, MenuTrigger, Popover } from "react-aria-components";
import { words } from "../../words/index.js";
import { MoreIcon, SearchIcon } from "./icons.js";
import { shortKey } from "./keys.js";
import { openPanel, usePanels } from "./panels.js";
import { isApple, useNarrow } from "./screen.js";

const says = words.book;

/** Opens the search over the whole site. */
export function SearchButton(): ReactNode {
  const key = shortKey("search", isApple());
  return (
    <button
      type="button"
      className="round search-button"
      aria-label={says.keys.search}
      title={`${says.keys.search} (${key ?? ""})`}
      onClick={() => openPanel("search")}
    >
      <SearchIcon />
    </button>
  );
}

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
            <MenuItem id="search" onAction={() => openPanel("search")}>
              {says.keys.search}
            </MenuItem>
          )}
          {narrow && (
            <MenuItem id="steps" onAction={() => openPanel("steps")}>
              {says.steps.title}
            </MenuItem>
          )}
          <MenuItem id="keys" onAction={() => openPanel("keys")}>
            {says.keys.title}
          </MenuItem>
          <MenuItem id="tour" onAction={() => usePanels.setState({ touring: true })}>
            {says.tour.ask}
          </MenuItem>
          <MenuItem id="terms" onAction={() => openPanel("terms")}>
            {says.terms.title}
          </MenuItem>
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
