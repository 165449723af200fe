import type { ReactNode } from "react";
import { Button, Menu, MenuItem, MenuTrigger, Popover } from "react-aria-components";
import { words } from "../../words/index.js";
import type { BarTool } from "./barTool.js";

/** The tools that do not fit beside each other, in a menu; what is at work is checked. */
export function MoreTools({ tools }: { tools: readonly BarTool[] }): ReactNode {
  const on = tools.filter((tool) => tool.on === true).map(({ id }) => id);
  return (
    <MenuTrigger>
      <Button
        className="bar-button"
        aria-label={words.looking.moreOf}
        data-on={on.length > 0 ? "" : undefined}
      >
        {words.looking.more} <span aria-hidden="true">▾</span>
      </Button>
      <Popover className="menu-popover" placement="bottom start">
        <Menu
          className="menu"
          aria-label={words.looking.moreOf}
          selectionMode="multiple"
          selectedKeys={on}
          shouldCloseOnSelect
        >
          {tools.map((tool) => (
            <MenuItem key={tool.id} id={tool.id} textValue={tool.name} onAction={tool.press}>
              {tool.name}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
