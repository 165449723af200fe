import type { ReactNode } from "react";
import { Button, Menu, MenuItem, MenuTrigger, Popover } from "react-aria-components";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";

/** Copies what is picked to another scheme; nothing where there is only one. */
export function CopyTo(): ReactNode {
  const { site, schemeId } = useSite();
  const copy = useDesk((desk) => desk.copyToScheme);
  const others = site.schemes.filter((scheme) => scheme.id !== schemeId);
  if (others.length === 0) return null;
  return (
    <MenuTrigger>
      <Button className="link">{words.picked.form.copyTo}</Button>
      <Popover className="menu-popover" placement="bottom start">
        <Menu className="menu" aria-label={words.picked.form.copyToLabel}>
          {others.map((scheme) => (
            <MenuItem key={scheme.id} id={scheme.id} onAction={() => copy(scheme.id)}>
              {scheme.name}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
