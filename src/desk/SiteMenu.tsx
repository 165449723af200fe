import type { ReactNode } from "react";
import {
  Button,
  Header,
  Menu,
  MenuItem,
  MenuSection,
  MenuTrigger,
  Popover,
  Separator,
} from "react-aria-components";
import { setUnits } from "../site/index.js";
import type { Site } from "../site/index.js";
import { examples, openShelf, useDesk } from "../store/index.js";
import { words } from "../words/index.js";
import { askForSite, openSiteFile, saveSite } from "./files.js";

function SchemeSection({ site, schemeId }: { site: Site; schemeId: string }): ReactNode {
  const chooseScheme = useDesk((desk) => desk.chooseScheme);
  return (
    <MenuSection
      selectionMode="single"
      selectedKeys={[schemeId]}
      disallowEmptySelection
      aria-label={words.desk.schemesGround}
    >
      <Header>{words.desk.schemesGround}</Header>
      {site.schemes.map((scheme) => (
        <MenuItem key={scheme.id} id={scheme.id} onAction={() => chooseScheme(scheme.id)}>
          {scheme.name}
        </MenuItem>
      ))}
    </MenuSection>
  );
}

function FileSection(): ReactNode {
  const openExample = useDesk((desk) => desk.openExample);
  const show = useDesk((desk) => desk.show);
  return (
    <MenuSection aria-label={words.desk.sites}>
      <Header>{words.desk.sites}</Header>
      <MenuItem id="shelf" onAction={() => void openShelf()}>
        {words.shelf.menu}
      </MenuItem>
      <MenuItem id="start" onAction={() => show({ starting: true })}>
        {words.desk.startMyOwnSite}
      </MenuItem>
      <MenuItem id="open" onAction={askForSite}>
        {words.desk.openSiteFile}
      </MenuItem>
      <MenuItem id="save" onAction={saveSite}>
        {words.desk.saveFile}
      </MenuItem>
      {examples.map((example) => (
        <MenuItem
          key={example.id}
          id={`example-${example.id}`}
          onAction={() => void openExample(example.id)}
        >
          {words.desk.example(example.title)}
        </MenuItem>
      ))}
    </MenuSection>
  );
}

function UnitsSection({ site }: { site: Site }): ReactNode {
  const edit = useDesk((desk) => desk.edit);
  return (
    <MenuSection
      selectionMode="single"
      selectedKeys={[site.units]}
      disallowEmptySelection
      aria-label={words.desk.units}
    >
      <Header>{words.desk.units}</Header>
      <MenuItem
        id="us"
        onAction={() => edit(words.desk.showFeetEdit, (one) => setUnits(one, "us"))}
      >
        {words.desk.feetInchesCubicYards}
      </MenuItem>
      <MenuItem
        id="metric"
        onAction={() => edit(words.desk.showMetresEdit, (one) => setUnits(one, "metric"))}
      >
        {words.desk.metresCubicMetres}
      </MenuItem>
    </MenuSection>
  );
}

function ThemeSection(): ReactNode {
  const theme = useDesk((desk) => desk.theme);
  const show = useDesk((desk) => desk.show);
  return (
    <MenuSection
      selectionMode="single"
      selectedKeys={[theme]}
      disallowEmptySelection
      aria-label={words.desk.light}
    >
      <Header>{words.desk.light}</Header>
      <MenuItem id="system" onAction={() => show({ theme: "system" })}>
        {words.desk.asThisDevice}
      </MenuItem>
      <MenuItem id="light" onAction={() => show({ theme: "light" })}>
        {words.desk.day}
      </MenuItem>
      <MenuItem id="dark" onAction={() => show({ theme: "dark" })}>
        {words.desk.nightShift}
      </MenuItem>
    </MenuSection>
  );
}

/** The site's name and scheme, and under it everything that is done with a whole site. */
export function SiteMenu(): ReactNode {
  const site = useDesk((desk) => desk.history?.present ?? null);
  const schemeId = useDesk((desk) => desk.schemeId);
  const scheme = site?.schemes.find((one) => one.id === schemeId);
  return (
    <MenuTrigger>
      <Button className="button site-button">
        <span className="site-name">{site?.name ?? words.desk.noSite}</span>
        {scheme !== undefined && <span className="scheme">{scheme.name}</span>}
        <span aria-hidden="true">▾</span>
      </Button>
      <Popover className="menu-popover" placement="bottom start">
        <Menu className="menu" aria-label={words.desk.site}>
          {site !== null && <SchemeSection site={site} schemeId={schemeId} />}
          {site !== null && <Separator />}
          <FileSection />
          {site !== null && <Separator />}
          {site !== null && <UnitsSection site={site} />}
          <Separator />
          <ThemeSection />
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

/** Opens the first dropped file. */
export function openDropped(files: FileList): void {
  const file = files[0];
  if (file !== undefined) void openSiteFile(file);
}
