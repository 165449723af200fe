import { useId } from "react";
import type { ReactNode } from "react";

interface ChoiceFieldProps<T extends string> {
  label: ReactNode;
  value: T;
  choices: readonly { id: T; name: string }[];
  onChoose: (value: T) => void;
  name?: string;
}

/** A choice of a few, as the browser's own list (which works best under a thumb). */
export function ChoiceField<T extends string>(props: ChoiceFieldProps<T>): ReactNode {
  const { label, value, choices, onChoose, name } = props;
  const id = useId();
  const known = choices.some((choice) => choice.id === value);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        data-field={name}
        value={value}
        onChange={(event) => {
          const chosen = choices.find((choice) => choice.id === event.target.value);
          if (chosen !== undefined) onChoose(chosen.id);
        }}
      >
        {!known && <option value={value}>{value}</option>}
        {choices.map((choice) => (
          <option key={choice.id} value={choice.id}>
            {choice.name}
          </option>
        ))}
      </select>
    </div>
  );
}
