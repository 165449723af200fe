import type { ReactNode } from "react";
import { MeasureField } from "./MeasureField.js";
import { percent } from "./percent.js";
import type { TypicalValue } from "./Typical.js";

interface ShareFieldProps {
  label: ReactNode;
  value: number | undefined;
  /** Most that is allowed, 0 to 1. */
  most: number;
  onCommit: (value: number) => void;
  onClear: () => void;
  name: string;
  usual: string;
  note?: string | undefined;
  doubt?: (value: number) => string | null;
  typical?: TypicalValue | undefined;
}

/** A field for a share, as a person says it: 5%. */
export function ShareField(props: ShareFieldProps): ReactNode {
  return <MeasureField {...props} measure={percent} least={0} />;
}
