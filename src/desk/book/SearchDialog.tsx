import { useMemo, useState } from "react";
import type { ReactNode } from "react";
import {
  Autocomplete,
  Button,
  Dialog,
  Heading,
  Input,
  Menu,
  MenuItem,
  Modal,
  ModalOverlay,
  SearchField,
} from "react-aria-components";
import { words } from "../../words/index.js";
import { useBarTools } from "../bar/tools.js";
import { useOpenSite } from "../useSite.js";
import { closePanel, usePanels } from "./panels.js";
import { found, searchEntries } from "./searchIndex.js";
import type { Entry } from "./searchIndex.js";

const says = words.book.search;

function Result({ entry }: { entry: Entry }): ReactNode {
  return (
    <MenuItem id={entry.id} textValue={entry.title} className="result" onAction={entry.go}>
      <span className="result-title">{entry.title}</span>
      {entry.aside !== undefined && <span className="result-aside">{entry.aside}</span>}
      <span className="result-kind">{says.kinds[entry.kind]}</span>
    </MenuItem>
  );
}

function Search(): ReactNode {
  const open = useOpenSite();
  const tools = useBarTools();
  const [query, setQuery] = useState("");
  const entries = useMemo(() => {
    const bar = tools.map(({ id, name, title, press }): Entry => ({
      ...{ id: `bar ${id}`, kind: "action", title: name, more: title, aside: title, go: press },
    }));
    return [...searchEntries(open), ...bar];
  }, [open, tools]);
  const results = useMemo(() => found(open, entries, query), [open, entries, query]);
  return (
    <Autocomplete inputValue={query} onInputChange={setQuery}>
      <div className="search-head">
        <SearchField autoFocus aria-label={says.label} className="search-field">
          <Input className="search-input" placeholder={says.hint} />
        </SearchField>
        <Button slot="close" className="round" aria-label={words.book.close}>
          ✕
        </Button>
      </div>
      <Menu
        className="menu results"
        aria-label={says.results}
        items={results}
        renderEmptyState={() => <p className="says no-results">{says.none(query.trim())}</p>}
        onClose={() => closePanel("search")}
      >
        {(entry) => <Result entry={entry} />}
      </Menu>
    </Autocomplete>
  );
}

/** Finds anything on the desk by its name, and goes there or does it. */
export function SearchDialog(): ReactNode {
  const isOpen = usePanels((panels) => panels.open === "search");
  return (
    <ModalOverlay
      className="overlay search-overlay"
      isDismissable
      isOpen={isOpen}
      onOpenChange={(open) => !open && closePanel("search")}
    >
      <Modal className="modal search-modal">
        <Dialog className="search-dialog">
          <Heading slot="title" className="unseen">
            {says.title}
          </Heading>
          <Search />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
