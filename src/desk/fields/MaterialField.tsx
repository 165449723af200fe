import type { ReactNode } from "react";
import { materialsOf, NATIVE } from "../../site/index.js";
import type { MaterialKind } from "../../site/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";
import { ChoiceField } from "./ChoiceField.js";

interface MaterialFieldProps {
  label: ReactNode;
  value: string;
  kinds: readonly MaterialKind[];
  /** Offers the site's own earth as well. */
  own?: boolean;
  onChoose: (material: string) => void;
  name?: string;
}

/** A choice of material, of some kinds of it. */
export function MaterialField(props: MaterialFieldProps): ReactNode {
  const { label, value, kinds, own, onChoose, name } = props;
  const { site } = useSite();
  const choices = [...materialsOf(site).values()]
    .filter((material) => kinds.includes(material.kind))
    .map(({ id, name: title }) => ({ id, name: title }));
  if (own === true) choices.unshift({ id: NATIVE, name: words.deskFields.sitesOwnEarth });
  return (
    <ChoiceField
      label={label}
      value={value}
      choices={choices}
      onChoose={onChoose}
      {...(name === undefined ? {} : { name })}
    />
  );
}
