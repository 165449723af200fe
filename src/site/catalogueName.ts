import { liquidVolume, type UnitSystem } from "../units/index.js";

/** Metric name of a nominal size in inches: pairs of ASME B36.10M and ISO 6708, recalled. */
const DN: Readonly<Record<string, number>> = {
  "1": 25,
  "1¼": 32,
  "1½": 40,
  "2": 50,
  "2½": 65,
  "3": 80,
  "4": 100,
  "6": 150,
  "8": 200,
};

const VOLUME = /([\d.,]+) (gal|m³)(?= |,|$)/;
const PIPE = /, (\d*[¼½¾]?) in(?=,|$)/;

/**
 * The name of a catalogue's row as a site of these units reads it: what a tank holds in its units; a
 * pipe by its trade's nominal inches, with DN beside them on a metric site.
 */
export function catalogueName(name: string, units: UnitSystem): string {
  const volume = name.replace(VOLUME, (_, figure: string, unit: string) => {
    const value = Number(figure.replaceAll(",", ""));
    const held = unit === "gal" ? liquidVolume.fromSystem(value, "us") : value;
    return liquidVolume.print(held, units);
  });
  if (units === "us") return volume;
  return volume.replace(PIPE, (all, inches: string) => {
    const dn = DN[inches];
    return dn === undefined ? all : `${all} (DN ${dn})`;
  });
}
